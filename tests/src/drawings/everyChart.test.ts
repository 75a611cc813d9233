import { beforeAll, describe, expect, it } from 'vitest';
import { disturbanceChart } from '../../../src/drawings/disturbance.ts';
import { rippleChart } from '../../../src/drawings/ripple.ts';
import { spectrumChart } from '../../../src/drawings/spectrum.ts';
import { staircaseChart } from '../../../src/drawings/staircase.ts';
import { axes } from '../../../src/plot/axes.ts';
import type { Drawing } from '../../../src/plot/drawing.ts';
import { canBeSeen } from '../../../src/plot/inside.ts';
import { labelWidth } from '../../../src/plot/marks.ts';
import { svg } from '../../../src/plot/svg.ts';
import { disturbance } from '../../../workers/accuracy/disturbance.ts';
import { ripple } from '../../../workers/accuracy/ripple.ts';
import { staircase } from '../../../workers/accuracy/staircase.ts';
import { recordedDrives, recordedJob } from '../../shared/study/recordedStudy.ts';
import { marksOf, textsIn, valuesIn } from '../plot/readDrawing.ts';
import { type ChartData, everyChart, found, sampleData } from './everyChart.ts';

const data = sampleData();
const charts = everyChart(data);

/** How many marks that stand for values can be seen in each frame of a chart. */
function seenIn({ marks }: Drawing): number[] {
  return marksOf(marks, 'clip').map(
    ({ frame, marks: inner }) => valuesIn(inner).filter((mark) => canBeSeen(mark, frame)).length,
  );
}

function expectToShow(chart: Drawing): void {
  const seen = seenIn(chart);
  expect(seen.length).toBeGreaterThan(0);
  for (const count of seen) expect(count).toBeGreaterThan(0);
  expect(remarksOn(chart)).toEqual([]);
  expect(svg(chart).text.match(/NaN|Infinity|undefined|null/)).toBeNull();
}

function remarksOn({ marks }: Drawing): string[] {
  return marksOf(marks, 'label').flatMap((mark) => (mark.isRemark ? [mark.text] : []));
}

describe('every chart', () => {
  it.each([...charts])('%s shows finite values in each of its frames', (_, chart) => {
    expectToShow(chart);
  });

  it('is among those tested', () => {
    const files = import.meta.glob('../../../src/drawings/*.ts', { eager: true });
    const functions = Object.values(files).flatMap((file) => Object.keys(file as object));
    const names = functions.filter((name) => name.endsWith('Chart')).map((name) => name.replace('Chart', ''));
    const tested = [...charts.keys()].map((name) =>
      name.replaceAll(/ (\w)/g, (_, first) => first.toUpperCase()),
    );
    expect(names.length).toBeGreaterThan(9);
    expect(tested).toEqual(expect.arrayContaining(names));
  });

  it.each([...charts])('%s says what it shows, and closes every element that it opens', (_, chart) => {
    const { text } = svg(chart);
    const open: string[] = [];
    for (const [, slash, name, self] of text.matchAll(/<(\/?)([a-zA-Z]+)(?:"[^"]*"|[^>"])*?(\/?)>/g)) {
      if (slash) expect(open.pop()).toBe(name);
      else if (!self && name) open.push(name);
    }
    expect(open).toEqual([]);
    expect(text.slice(0, text.indexOf('>'))).toMatch(
      /^<svg class="drawing" viewBox="0 0 [\d.]+ [\d.]+" role="img" aria-label="[^"]{20,}"/,
    );
    // An id could be that of another on the page.
    expect(text.match(/ id="|url\(#/)).toBeNull();
  });

  it.each([...charts])('%s has no label that lies outside', (_, { size, marks }) => {
    for (const { x, y } of marksOf(marks, 'label')) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(size.width);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThan(size.height);
    }
  });
});

describe('labels', () => {
  it.each([...charts])('of %s lie beside each other', (_, { marks }) => {
    const boxes = marksOf(marks, 'label').map(({ x, y, text, align, upward }) => {
      // Text is rarely as wide as the room that is kept for it.
      const length = 0.9 * labelWidth(text);
      const before = { start: 0, middle: length / 2, end: length }[align];
      return upward
        ? { text, left: x - 6, right: x + 6, top: y - length + before, foot: y + before }
        : { text, left: x - before, right: x - before + length, top: y - 6, foot: y + 6 };
    });
    const overlapping = boxes.flatMap((a, k) =>
      boxes
        .slice(k + 1)
        .filter((b) => a.left < b.right && b.left < a.right && a.top < b.foot && b.top < a.foot)
        .map((b) => `${a.text} | ${b.text}`),
    );
    expect(overlapping).toEqual([]);
  });

  it('of a logarithmic axis leave out what has no room', () => {
    const labels = (width: number) =>
      textsIn(
        axes(
          { width, height: 200 },
          { title: 'Period', unit: 'mm', from: 2e-5, to: 0.05, log: true },
          { title: 'y', unit: '%', from: 0, to: 1 },
        ),
      ).filter((text) => / [µm]m$/.test(text));
    expect(labels(640)).toEqual(['100 µm', '1 mm', '10 mm']);
    expect(labels(1200)).toEqual(expect.arrayContaining(['20 µm', '50 µm', '100 µm']));
  });
});

describe('what the simulation measures of the default job', () => {
  const job = recordedJob();
  const drives = recordedDrives(job);

  it.each(['A', 'C'] as const)('the speed ripple of drive %s has a curve', (letter) => {
    const test = found(ripple(drives[letter].scene, job));
    expectToShow(rippleChart(test, job.values.rippleLimit));
    expectToShow(spectrumChart(test));
  });

  it('staircase and force step have curves', () => {
    expectToShow(staircaseChart(found(staircase(drives.C.scene))));
    expectToShow(disturbanceChart(found(disturbance(drives.C.scene)), job.values.window));
  });
});

describe('a chart of values that are not finite', () => {
  let damaged: ReadonlyMap<string, Drawing>;
  let empty: ReadonlyMap<string, Drawing>;

  beforeAll(() => {
    damaged = everyChart(changed(data, (value, k) => (k % 3 === 1 ? Number.NaN : value)));
    empty = everyChart(changed(data, () => Number.NaN));
  });

  it.each([...charts.keys()])('%s draws the others and says how many are missing', (name) => {
    const chart = damaged.get(name);
    if (!chart) throw new Error(name);
    expect(remarksOn(chart).join()).toMatch(/not finite/);
    expect(chart.description).toMatch(/not finite\.$/);
    expect(Math.max(...seenIn(chart))).toBeGreaterThan(0);
    expect(svg(chart).text.match(/NaN|Infinity/)).toBeNull();
  });

  it.each([...charts.keys()])('%s says why it is empty when there are no others', (name) => {
    const chart = empty.get(name);
    if (!chart) throw new Error(name);
    expect(remarksOn(chart).join()).toMatch(/None of \d+ values is finite|The value is not finite/);
    expect(svg(chart).text.match(/NaN|Infinity/)).toBeNull();
  });
});

type Change = (value: number, index: number) => number;

/** The same data with each number of its lists changed; the figures beside them stay. */
function changed(whole: ChartData, change: Change): ChartData {
  const { accuracy, courses, temperatures, loop, envelope, motion, residual } = whole;
  const [cold, ...others] = accuracy.positioning.map(found);
  if (!cold) throw new Error('no positioning');
  const increment = found(accuracy.increment);
  const { figures } = cold;
  return {
    motion: inLists(motion, change, 'position'),
    envelope: {
      ...inLists(envelope, change, 'peak', 'continuous'),
      trajectory: envelope.trajectory.map((each, k) => ({ ...each, force: change(each.force, k) })),
    },
    accuracy: {
      positioning: [
        {
          ...cold,
          up: cold.up.map((row) => row.map(change)),
          down: cold.down.map((row) => row.map(change)),
          figures: inLists(figures, change, 'meanUp', 'meanDown'),
        },
        ...others,
      ],
      staircase: inLists(found(accuracy.staircase), change, 'tool', 'set'),
      ripple: {
        ...inLists(found(accuracy.ripple), change, 'deviation', 'amplitude'),
        inBand: inLists(found(accuracy.ripple).inBand, change, 'deviation'),
      },
      increment: {
        ...increment,
        tried: increment.tried.map((each, k) => ({ ...each, mean: change(each.mean, k) })),
      },
      disturbance: inLists(found(accuracy.disturbance), change, 'error'),
      energy: changedFlow(found(accuracy.energy), change),
    },
    courses: courses.map((each) => ({ ...each, course: changedCourse(each.course, change) })),
    temperatures: {
      ...temperatures,
      course: changedCourse(temperatures.course, change),
      other: changedCourse(temperatures.other, change),
    },
    loop: {
      ...loop,
      pinned: null,
      measured: null,
      filters: [],
      analysis: changedLoop(loop.analysis, change),
    },
    residual: {
      ...residual,
      measured: residual.measured.map(change),
      model: residual.model.map(change),
      residual: residual.residual.map(change),
    },
  };
}

function inLists<T extends object, K extends keyof T>(whole: T, change: Change, ...names: K[]): T {
  const lists = names.map((name) => [name, (whole[name] as readonly number[]).map(change)]);
  return { ...whole, ...Object.fromEntries(lists) };
}

function changedFlow<T extends object>(flow: T, change: Change): T {
  return Object.fromEntries(Object.entries(flow).map(([name, value], k) => [name, change(value, k)])) as T;
}

function changedCourse(course: ChartData['temperatures']['course'], change: Change): typeof course {
  const samples = course.samples.map((sample, k) => ({
    ...sample,
    growth: change(sample.growth, k),
    forcePerAmp: change(sample.forcePerAmp, k),
    winding: change(sample.winding, k),
    carrier: change(sample.carrier, k),
    table: change(sample.table, k),
    screw: change(sample.screw, k),
  }));
  return { ...course, samples };
}

function changedLoop(analysis: ChartData['loop']['analysis'], change: Change): typeof analysis {
  const response = ({ magnitude, phase }: typeof analysis.openLoop) => ({
    magnitude: magnitude.map(change),
    phase: phase.map(change),
  });
  return {
    ...analysis,
    openLoop: response(analysis.openLoop),
    sensitivity: response(analysis.sensitivity),
    closedLoop: response(analysis.closedLoop),
    stiffness: response(analysis.stiffness),
    nyquistRe: analysis.nyquistRe.map(change),
    nyquistIm: analysis.nyquistIm.map(change),
    eigenvaluesRe: analysis.eigenvaluesRe.map(change),
  };
}
