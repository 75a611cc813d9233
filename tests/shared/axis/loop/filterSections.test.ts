import { describe, expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../../../scenes/index.ts';
import { filterCoefficients, staticGain } from '../../../../shared/axis/loop/filterSections.ts';
import { parameterWarnings } from '../../../../shared/axis/warnings.ts';
import { checkParameters } from '../../../../shared/core/check.ts';
import { onPage, sentenceText } from '../../../../shared/core/sentence.ts';
import { measureRun } from '../../../../workers/run/measureRun.ts';

const { parameters } = DEFAULT_SCENE;
const rate = parameters.currentRate / parameters.positionDivider;

describe('a filter of the loop', () => {
  it.each([
    ['notch', { filter2Frequency: 700, filter2Damping: 0.3, filter2Depth: 0.2 }],
    ['peak', { filter2Frequency: 90, filter2Damping: 0.4, filter2Rise: 1.3 }],
    ['low-pass', { filter2Frequency: 1500, filter2Damping: 0.6 }],
    ['lead-lag', { filter2Frequency: 400, filter2Ratio: 1.4 }],
  ] as const)('as a %s runs as the same filter by its coefficients does', (type, values) => {
    const p = { ...parameters, ...values, filter2: type };
    const { b0, b1, b2, a1, a2 } = filterCoefficients(p, 2, rate);
    expect(staticGain({ b0, b1, b2, a1, a2 })).toBeCloseTo(1, 12);
    const byCoefficients = {
      ...parameters,
      filter2: 'coefficients',
      filter2B0: b0,
      filter2B1: b1,
      filter2B2: b2,
      filter2A1: a1,
      filter2A2: a2,
    } as const;
    const errors = [parameters, p, byCoefficients].map(
      (each) => measureRun({ ...DEFAULT_SCENE, parameters: each }, 0.3).rmsFollowingError,
    );
    expect(errors[2]).toBe(errors[1]);
    expect(errors[1]).not.toBe(errors[0]);
  });

  // Jury's criterion: z² − 2.1 z + 1.08 has a root at 1.2, z² + 1 both on the unit circle.
  it.each([
    { filter3A1: -2, filter3A2: 0.96 },
    { filter3A1: 0, filter3A2: 1 },
  ])('with poles outside the unit circle is refused by its number: %j', (poles) => {
    const { problems } = checkParameters({ filter3: 'coefficients', ...poles }, parameters);
    const texts = problems.map(({ message }) => sentenceText(message, onPage('metric')));
    expect(texts.join(' ')).toMatch(/^Filter 3 is unstable with .*Make \|a2\| less than 1/);
    // What is not in use may be anything.
    expect(checkParameters({ filter3: 'notch', ...poles }, parameters).problems).toEqual([]);
  });

  it('that does not pass what is constant is pointed out', () => {
    const p = { ...parameters, filter1: 'coefficients', filter1B0: 0.5 } as const;
    const texts = parameterWarnings(p).map((warning) => sentenceText(warning, onPage('metric')));
    expect(texts).toContainEqual(expect.stringMatching(/^Filter 1 has a gain of 0\.500 at standstill/));
    expect(parameterWarnings(parameters)).toEqual([]);
  });
});
