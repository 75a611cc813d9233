import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { defaultParameters, type Parameters } from '../../../shared/core/parameters/table.ts';
import { type OperatingPoint, startingPoint } from '../../../shared/protocol/analysis.ts';
import { SampledLoop } from '../../../workers/analysis/sampledLoop.ts';
import type { Complex } from '../../../workers/math/complex.ts';
import { filesUnder, ROOT } from '../../tools/sources.mjs';

/*
 * The sampled loop against a second one, put together in another language from the model page alone and solved by SciPy: see
 * reference/loop_reference.py.
 */

type Pair = readonly [re: number, im: number];

interface Case {
  readonly name: string;
  readonly friction: OperatingPoint['friction'];
  readonly parameters: Parameters;
  readonly results: {
    readonly frequency: readonly number[];
    readonly openLoop: readonly Pair[];
    readonly compliance: readonly Pair[];
    readonly eigenvalues: readonly Pair[];
  };
}

const CASES = filesUnder('tests/workers/analysis/reference')
  .filter((file) => file.endsWith('.json'))
  .map((file) => JSON.parse(readFileSync(join(ROOT, file), 'utf8')) as Case);

/** The differences of both sides' derivatives and the rounding of SciPy's unbalanced matrices. */
const RELATIVE = 1e-6;

it('has a reference of each kind of drive', () => {
  expect(CASES.map(({ name }) => name)).toEqual([
    'flat-pair-on-base',
    'screw-presliding',
    'tubular-presliding',
    'u-channel-fast',
  ]);
});

describe.each(CASES)('$name', ({ friction, parameters, results }) => {
  const p = { ...defaultParameters(), ...parameters };
  const loop = new SampledLoop(p, { ...startingPoint(p), friction });

  const deviation = (expected: readonly Pair[], found: (omega: number) => Complex) =>
    Math.max(
      ...results.frequency.map((frequency, k) => {
        const [re, im] = at(expected, k);
        const value = found(2 * Math.PI * frequency);
        return Math.hypot(value.re - re, value.im - im) / Math.hypot(re, im);
      }),
    );

  it('has the same open loop', () => {
    expect(deviation(results.openLoop, (omega) => loop.openLoop(omega))).toBeLessThan(RELATIVE);
  });

  it('has the same compliance', () => {
    expect(deviation(results.compliance, (omega) => loop.compliance(omega))).toBeLessThan(RELATIVE);
  });

  it('has the same eigenvalues', () => {
    const { re, im } = loop.eigenvalues;
    for (const [expectedRe, expectedIm] of results.eigenvalues) {
      const nearest = Math.min(
        ...re.map((value, k) => Math.hypot(value - expectedRe, at(im, k) - expectedIm)),
      );
      expect(nearest).toBeLessThan(RELATIVE);
    }
  });
});
