import { describe, expect, it } from 'vitest';
import { SCENES } from '../../scenes/index.ts';
import { at as elementAt, present, valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import { Axis } from '../../workers/run/axis.ts';
import { measureRun } from '../../workers/run/measureRun.ts';
import { between, recordedRun, rms, shelfScene } from './runs.ts';

describe.each(SCENES)('scene $id', (scene) => {
  const { summary, samples } = recordedRun(scene, 1.2);

  it('runs without a trip and without a number that is none', () => {
    expect(summary.trip).toBeNull();
    expect(samples.every((record) => record.every(Number.isFinite))).toBe(true);
  });

  it('balances its energy to 1e-6 of what went through', () => {
    expect(Math.abs(summary.energyResidual)).toBeLessThan(1e-6);
  });

  it('stays what it was: its figures to three digits', () => {
    const three = (value: number | null) => (value === null ? null : Number(value.toPrecision(3)));
    expect({
      peakFollowingError: three(summary.peakFollowingError),
      rmsFollowingError: three(summary.rmsFollowingError),
      peakForce: three(summary.peakForce),
      rmsCurrent: three(summary.rmsCurrent),
      copperLoss: three(summary.copperLoss),
      settlingTime: three(summary.settlingTime),
    }).toMatchSnapshot();
  });
});

describe('what the scenes say is to be seen', () => {
  it('cogging leaves a ripple in a slow scan that a coreless motor does not have', () => {
    const scan = (name: string) => {
      const { samples } = recordedRun(shelfScene(name), 6);
      return {
        error: rms(between(samples, C.followingError, 1, 6)),
        current: rms(between(samples, C.forceCurrent, 1, 6)),
      };
    };
    const [iron, coreless] = [scan('slow-scan-iron'), scan('slow-scan-coreless')];
    expect(iron.current / coreless.current).toBeGreaterThan(4);
    expect(iron.error / coreless.error).toBeGreaterThan(2);
  });

  it('a misaligned motor costs force, circulating current and heat', () => {
    const run = (misalignment3: number) =>
      recordedRun(shelfScene('four-motors-one-misaligned', { misalignment3 }), 0.5);
    const [off, straight] = [run(shelfScene('four-motors-one-misaligned').parameters.misalignment3), run(0)];
    expect(off.summary.copperLoss / straight.summary.copperLoss).toBeGreaterThan(1.01);
    expect(Math.max(...off.samples.map((r) => valueAt(r, C.circulatingCurrent)))).toBeGreaterThan(0.5);
    expect(Math.max(...straight.samples.map((r) => valueAt(r, C.circulatingCurrent)))).toBeLessThan(1e-9);
    // The same force takes more current: three motors give all, one cos(πδ/τ) at best.
    expect(off.summary.peakCurrent / straight.summary.peakCurrent).toBeGreaterThan(1.005);
  });

  it('lost motion hides from an encoder on the motor', () => {
    const scene = shelfScene('screw-backlash');
    const axis = new Axis(scene);
    const offsets: number[] = [];
    let stood = false;
    while (axis.time < 4) {
      axis.step();
      const standing = !axis.set.moving && axis.set.segment > 0;
      if (stood && !standing)
        offsets.push(valueAt(axis.record, C.tablePosition) - valueAt(axis.record, C.encoderPosition));
      stood = standing;
    }
    const spread = Math.max(...offsets) - Math.min(...offsets);
    expect(Math.abs(spread / scene.parameters.backlash - 1)).toBeLessThan(0.1);
  });

  it('a soft base rings on after the move; a fixed one does not', () => {
    const tail = (base: boolean) => {
      const { samples } = recordedRun(shelfScene('soft-base', { base, dwell: 0.6 }), 0.9);
      return rms(between(samples, C.followingError, 0.6, 0.9));
    };
    expect(tail(true) / tail(false)).toBeGreaterThan(3);
  });

  it('a counterbalance takes the weight off the motor', () => {
    const scene = shelfScene('vertical-counterbalance');
    const bare = shelfScene('vertical-counterbalance', { counterbalance: 0, followingErrorLimit: 0.1 });
    expect(measureRun(scene, 1).copperLoss).toBeLessThan(measureRun(bare, 1).copperLoss / 3);
  });
});

describe('common practice, no source', () => {
  it('dual ironless tubular motors on air bearings step 25 kg by 5 nm without overshoot beyond one count of noise and without lost motion', () => {
    const scene = shelfScene('nanometre-staircase');
    const p = scene.parameters;
    expect([p.payload, p.motorCount, p.stairStep, p.encoderResolution]).toEqual([25, 2, 5e-9, 1e-9]);
    expect([p.frictionCoefficient, p.sealFriction, p.backlash]).toEqual([0, 0, 0]);
    const { samples } = recordedRun(scene, 4);
    const levels: { settled: number; peak: number; at: number }[] = [];
    // Each stair: from where the setpoint stands still again to where it moves on.
    let start = 0;
    for (let k = 1; k < samples.length; k++) {
      const moved = elementAt(samples, k)[C.setpoint] !== elementAt(samples, k - 1)[C.setpoint];
      if (!moved) continue;
      if (k - start > 200) {
        const at = valueAt(elementAt(samples, k - 1), C.setpoint);
        const table = samples.slice(start, k).map((r) => valueAt(r, C.tablePosition) - at);
        const tail = table.slice(-100);
        levels.push({
          at,
          settled: tail.reduce((a, b) => a + b, 0) / tail.length,
          peak: Math.max(...table.map(Math.abs).slice(Math.floor(table.length / 4))),
        });
      }
      start = k;
    }
    expect(levels.length).toBeGreaterThan(8);
    for (const level of levels) {
      expect(level.peak).toBeLessThan(1e-9 + 3 * p.encoderNoise);
      expect(Math.abs(level.settled)).toBeLessThan(0.5e-9);
    }
    // No lost motion that the encoder could see: the same level is met from below and from above within one count.
    const byLevel = new Map<number, number[]>();
    for (const { at, settled } of levels) {
      const key = Math.round(at * 1e10);
      byLevel.set(key, [...(byLevel.get(key) ?? []), settled]);
    }
    for (const values of byLevel.values())
      expect(Math.max(...values) - Math.min(...values)).toBeLessThan(p.encoderResolution);
  });

  it('a tubular motor may run 0.5 to 2.5 mm from its shaft with no practical change of force', () => {
    // A nominal gap of 1.5 mm all round: 0.5 mm on one side and 2.5 mm on the other is an eccentricity of 1 mm.
    const force = (coilOffset: number) => measureRun(shelfScene('mould-shuttle', { coilOffset }), 0.3);
    const [centred, eccentric] = [force(0), force(1e-3)];
    expect(Math.abs(eccentric.peakCurrent / centred.peakCurrent - 1)).toBeLessThan(0.005);
  });

  it('an iron-core motor gives less force per ampere as it heats', () => {
    const forcePerAmp = (temperature: number) => {
      const { samples } = recordedRun(
        shelfScene('slow-scan-iron', {
          program: 'hold',
          process: 'constant',
          processForce: 150,
          windingStart: temperature,
          carrierStart: temperature,
          Ki: 1e9,
        }),
        0.6,
      );
      const last = present(samples.at(-1));
      return valueAt(last, C.motorForce) / valueAt(last, C.forceCurrent);
    };
    const fall = 1 - forcePerAmp(90) / forcePerAmp(22);
    expect(fall).toBeGreaterThan(0.01);
    expect(fall).toBeLessThan(0.08);
  });
});
