import { describe, expect, it } from 'vitest';
import type {
  DisturbanceTest,
  EnergyFlow,
  IncrementTest,
  PositioningTest,
  RippleTest,
  StaircaseTest,
} from '../../../shared/protocol/accuracy.ts';
import { disturbanceChart } from '../../../src/drawings/disturbance.ts';
import { driftChart } from '../../../src/drawings/drift.ts';
import { energyFlowChart } from '../../../src/drawings/energyFlow.ts';
import { growthChart } from '../../../src/drawings/growth.ts';
import { incrementsChart } from '../../../src/drawings/increments.ts';
import { positioningChart } from '../../../src/drawings/positioning.ts';
import { rippleChart } from '../../../src/drawings/ripple.ts';
import { spectrumChart } from '../../../src/drawings/spectrum.ts';
import { staircaseChart } from '../../../src/drawings/staircase.ts';
import { temperaturesChart } from '../../../src/drawings/temperatures.ts';
import { lineChart } from '../../../src/plot/svg/lineChart.ts';
import type { Markup } from '../../../src/ui/markup.ts';
import { sampleCandidates } from '../../shared/study/sampleOutcome.ts';
import { labelsIn, numberOf, readerOf } from '../plot/readDrawing.ts';

const candidates = sampleCandidates();
const SIZES = [
  { width: 330, height: 250 },
  { width: 640, height: 300 },
];

/** Every drawing of every sample candidate in every size. */
const drawings: [string, Markup][] = SIZES.flatMap((size) =>
  candidates.flatMap(({ letter, outcome, scene }): [string, Markup][] => {
    const { accuracy, heat } = outcome;
    const course = { letter, course: heat.asSet };
    const named = (name: string, drawing: Markup): [string, Markup] => [
      `${name} ${letter} ${size.width}`,
      drawing,
    ];
    const temperatures = {
      course: heat.asSet,
      other: heat.switched,
      foldback: scene.parameters.foldbackTemperature,
      limit: scene.parameters.windingLimit,
      hasScrew: scene.parameters.lead > 0,
    };
    return [
      named('temperatures', temperaturesChart(temperatures, undefined, size, 3600)),
      named('drift', driftChart([course], size)),
      named('growth', growthChart([course], 5e-6, size, 0, 1e-5)),
      ...accuracy.positioning.map((test, k) =>
        named(`positioning ${k}`, positioningChart(test as PositioningTest, undefined, size)),
      ),
      named('staircase', staircaseChart(accuracy.staircase as StaircaseTest, undefined, size)),
      named('ripple', rippleChart(accuracy.ripple as RippleTest, 0.02, undefined, size)),
      named('spectrum', spectrumChart(accuracy.ripple as RippleTest, undefined, size)),
      named('increments', incrementsChart(accuracy.increment as IncrementTest, undefined, size)),
      named('disturbance', disturbanceChart(accuracy.disturbance as DisturbanceTest, 1e-7, undefined, size)),
      named('energy', energyFlowChart(accuracy.energy as EnergyFlow, undefined, size)),
    ];
  }),
);

describe.each(drawings)('%s', (_name, { text }) => {
  it('holds no number that is none', () => {
    expect(text).not.toMatch(/NaN|Infinity|undefined|null/);
  });

  it('closes every element that it opens, and says in words what it shows', () => {
    const open: string[] = [];
    for (const [, slash, name, self] of text.matchAll(/<(\/?)([a-zA-Z]+)(?:"[^"]*"|[^>"])*?(\/?)>/g)) {
      if (slash) expect(open.pop()).toBe(name);
      else if (!self) open.push(name!);
    }
    expect(open).toEqual([]);
    expect(text).toMatch(
      /^<svg class="drawing" viewBox="0 0 [\d.]+ [\d.]+" role="img" aria-label="[^"]{20,}"/,
    );
  });

  it('has no id that another on the page could have as well', () => {
    expect(text).not.toMatch(/ id="|url\(#/);
  });
});

describe('a cause', () => {
  const ripple = candidates[0]!.outcome.accuracy.ripple as RippleTest;

  it('is written as text, whatever is in it', () => {
    const lines = [{ period: 1e-3, amplitude: 0.01, cause: '<script>"&' }];
    const { text } = spectrumChart({ ...ripple, lines });
    expect(text).not.toContain('<script');
    expect(text).toContain('&lt;script&gt;&quot;&amp;');
  });

  it('is numbered at the period that it has', () => {
    const drawing = spectrumChart(ripple);
    const marks = labelsIn(drawing, 'middle').filter(([label]) => /^[1-4]$/.test(label));
    const ticks = labelsIn(drawing, 'middle').filter(([label]) => /^10+ µm$/.test(label));
    expect(marks).toHaveLength(ripple.lines.length);
    // On a logarithmic axis equal ratios are equal distances: read between 10 µm and 100 µm.
    const [ten, hundred] = ticks.map(([, x]) => x);
    for (const [number, x] of marks) {
      const period = 1e-5 * 10 ** ((x - ten!) / (hundred! - ten!));
      expect(period / ripple.lines[numberOf(number) - 1]!.period).toBeCloseTo(1, 2);
    }
  });
});

describe('temperatures', () => {
  const { heat } = candidates[0]!.outcome;
  const heated = (max: number) => ({
    course: {
      ...heat.asSet,
      samples: heat.asSet.samples.map((sample, k) => ({ ...sample, winding: k === 0 ? 20 : max })),
    },
    other: heat.switched,
    foldback: 100,
    limit: 120,
    hasScrew: false,
  });

  it('have their limits at their heights once they come near to them', () => {
    const drawing = temperaturesChart(heated(90));
    const height = readerOf(drawing, 'end');
    // The words stand 5 px above their line, or 16 px below it at the top of the frame.
    const [, , y] = labelsIn(drawing, 'start').find(([label]) => label === 'fold-back 100 °C')!;
    expect(height(y + 5)).toBeCloseTo(100, 0);
    expect(drawing.text).toContain('limit 120 °C');
    expect(drawing.text).not.toContain('↑');
  });

  it('say where their limits are as long as those are far away', () => {
    expect(temperaturesChart(heated(30)).text).toContain('↑ fold-back 100 °C');
  });

  it('end with a cross where the drive stops itself', () => {
    const trip = { kind: 'over-temperature', time: 600, limit: 130 } as const;
    const data = heated(90);
    const stopped = { ...data, course: { ...data.course, samples: data.course.samples.slice(0, 11), trip } };
    const paths = ({ text }: Markup) => text.match(/<path/g)!.length;
    // Two strokes for each of winding, carrier and table.
    expect(paths(temperaturesChart(stopped, [stopped, data])) - paths(temperaturesChart(data))).toBe(6);
  });
});

describe('a line chart', () => {
  it('writes the name of a curve at the height at which it ends, in the line of its candidate', () => {
    const drawing = lineChart({
      text: 'Two lines that end at two heights.',
      x: { title: 'x', unit: 's', from: 0, to: 10 },
      y: { title: 'y', unit: 'N', from: 0, to: 10 },
      series: [
        { name: 'A high', x: [0, 10], y: [0, 8], pen: {} },
        { name: 'B low', x: [0, 10], y: [0, 2], pen: { dash: '9 4' } },
      ],
    });
    const at = (label: string) => labelsIn(drawing, 'start').find(([each]) => each === label)![2];
    const tick = (label: string) => labelsIn(drawing, 'end').find(([each]) => each === label)![2];
    expect(at('A high')).toBeCloseTo(tick('8'), 1);
    expect(at('B low')).toBeCloseTo(tick('2'), 1);
    expect(drawing.text).toContain('stroke-dasharray="9 4"');
  });
});
