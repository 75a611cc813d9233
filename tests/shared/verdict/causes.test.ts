import { describe, expect, it } from 'vitest';
import { largestGrowth } from '../../../shared/axis/growth.ts';
import { present } from '../../../shared/core/at.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import {
  currentCause,
  encoderCause,
  energyCause,
  growthCause,
  massCause,
  windingCause,
} from '../../../shared/verdict/causes.ts';
import type { JudgedCandidate } from '../../../shared/verdict/judgement.ts';
import { recordedDrives } from '../study/recordedStudy.ts';
import { relettered, withDay, withMoves } from './candidates.ts';

const { A, B, C, D } = recordedDrives();

function withParameters(candidate: JudgedCandidate, changes: Partial<Parameters>): JudgedCandidate {
  return {
    ...candidate,
    scene: { ...candidate.scene, parameters: { ...candidate.scene.parameters, ...changes } },
  };
}

describe('the cause of growth', () => {
  /** What leaving out a term of the model changes of its growth, m. */
  function share(candidate: JudgedCandidate, without: Partial<Parameters>): number {
    const { parameters: p } = candidate.scene;
    const end = present(candidate.outcome.heat.asSet.samples.at(-1));
    const growth = (of: Parameters) => largestGrowth(of, end, p.start, p.start + p.stroke);
    return Math.abs(growth(p) - growth({ ...p, ...without }));
  }

  const TERMS = {
    'from the table': { tableExpansion: 0 },
    'from the scale': { scaleExpansion: 0 },
    'from the screw': { screwExpansion: 0 },
  } as const;

  const cases = [
    ['an arm', withParameters(A, { toolArm: 0.3 })],
    ['a scale', withParameters(A, { toolArm: 0.005, scaleExpansion: 2e-5 })],
    ['a screw', D],
    ['a short warm screw of little expansion', withParameters(D, { screwExpansion: 1e-7, toolArm: 0.1 })],
  ] as const;

  it.each(cases)('is the term of the model that moves the tool most: %s', (_, candidate) => {
    const shares = Object.entries(TERMS).map(([text, without]) => [text, share(candidate, without)] as const);
    const [max] = shares.reduce((best, each) => (each[1] > best[1] ? each : best));
    expect(growthCause(candidate)).toContain(max);
  });

  it('is a screw for as much of its warming as its stretch does not take up', () => {
    const held = { screwSupport: 'fixed', toolArm: 0.1 } as const;
    expect(growthCause(withParameters(D, { ...held, screwPretension: 3 }))).toMatch(
      /from the screw, 27 K above the room, of which its stretch takes up 3.0 K, which the encoder/,
    );
    expect(growthCause(withParameters(D, { ...held, screwPretension: 20, screwExpansion: 1e-7 }))).toMatch(
      /from the table/,
    );
  });
});

describe('a cause beside a rival', () => {
  it('is the force per ampere, or the force, whichever explains the current', () => {
    const weak = withParameters(A, { forceConstant: 20 });
    expect(currentCause(weak, A)).toContain('its force per ampere is');
    expect(currentCause(withMoves(A, { rmsForce: 2 * A.outcome.moves.rmsForce }), A)).toContain('it needs');
    expect(currentCause(A, relettered(A, 'B'))).toBeNull();
    expect(currentCause(A, weak)).toBeNull();
  });

  it('is the loss, or the way out for it, whichever explains the winding', () => {
    const lossy = withDay(A, (sample) => ({
      ...sample,
      copper: 3 * sample.copper,
      winding: 22 + 3 * (sample.winding - 22),
    }));
    expect(windingCause(lossy, A)).toContain('of copper loss against');
    const ironLossy = withDay(A, (sample) => ({
      ...sample,
      iron: sample.iron + 3 * sample.copper,
      winding: 22 + 4 * (sample.winding - 22),
    }));
    expect(windingCause(ironLossy, A)).toContain('of iron loss against');
    const buried = withDay(A, (sample) => ({ ...sample, winding: 22 + 3 * (sample.winding - 22) }));
    expect(windingCause(buried, A)).toContain('each watt of loss in the motor warms it');
  });

  it('is the place of the encoder only where one sits on the motor and the other does not', () => {
    expect(encoderCause(D, A)).toContain('on the motor');
    expect(encoderCause(A, D)).toBeNull();
    expect(encoderCause(D, relettered(D, 'E'))).toBeNull();
  });
});

describe('a cause by itself', () => {
  it('is most of the energy, when something is', () => {
    expect([A, B, C, D].map(energyCause)).toEqual([
      '66 % of it copper loss',
      '51 % of it copper loss',
      '51 % of it guide friction',
      '65 % of it friction of nut and bearings',
    ]);
  });

  it('is what rotates, when that is a good part of the mass', () => {
    expect(massCause(A)).toBeNull();
    // J (2π/p_h)² over all that moves, by the parameters of the preset.
    const p = D.scene.parameters;
    const rotating = p.rotorInertia * ((2 * Math.PI) / p.lead) ** 2;
    const share = rotating / (rotating + p.coilMass + p.tableMass + p.payload);
    expect(massCause(D)).toBe(`${Math.round(100 * share)} % of it rotating inertia`);
  });
});
