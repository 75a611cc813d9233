import { describe, expect, it, test } from 'vitest';
import { axes } from '../../../src/plot/axes.ts';
import { spread } from '../../../src/plot/endLabels.ts';
import { greatestOf, rangeOf, widened, widenedLog } from '../../../src/plot/range.ts';
import { labelsIn, numberOf, textsIn } from './readDrawing.ts';

const size = { width: 640, height: 300 };

describe('ticks', () => {
  it('lie where their values are, in the unit that the axis names', () => {
    const made = axes(
      size,
      { title: 'Distance', unit: 'mm', from: 0, to: 0.06 },
      { title: 'Error', unit: 'mm', from: -4e-6, to: 4e-6 },
    );
    expect(textsIn(made)).toEqual(expect.arrayContaining(['Distance in mm', 'Error in µm']));
    const along = labelsIn(made, 'middle').filter(({ text }) => /\d/.test(text));
    const up = labelsIn(made, 'end');
    expect(along.length).toBeGreaterThan(3);
    expect(up.length).toBeGreaterThan(3);
    for (const { text, x } of along) expect(made.x.at(numberOf(text) * 1e-3)).toBeCloseTo(x, 9);
    for (const { text, y } of up) expect(made.y.at(numberOf(text) * 1e-6)).toBeCloseTo(y, 9);
  });

  it('of hours are whole hours, not round seconds', () => {
    const made = axes(
      size,
      { title: 'Duty', unit: 'h', from: 0, to: 28800 },
      { title: 'T', unit: '°C', from: 20, to: 60 },
    );
    const along = labelsIn(made, 'middle').map(({ text }) => text);
    expect(along).toEqual(['0', '1', '2', '3', '4', '5', '6', '7', '8', 'Duty in h']);
  });

  it('of a logarithmic axis are as far apart for each power of ten, each in its own unit', () => {
    const made = axes(
      size,
      { title: 'Period', unit: 'mm', from: 1e-6, to: 0.1, log: true },
      { title: 'Amplitude', unit: '%', from: 1e-4, to: 1, log: true },
    );
    const along = labelsIn(made, 'middle').filter(({ text }) => /^10* /.test(text));
    expect(along.map(({ text }) => text)).toEqual(['1 µm', '10 µm', '100 µm', '1 mm', '10 mm', '100 mm']);
    const [first = Number.NaN, ...others] = along.map(({ x }) => x);
    const decade = (along[1]?.x ?? Number.NaN) - first;
    for (const [k, x] of others.entries()) expect(x - first).toBeCloseTo((k + 1) * decade, 9);
  });

  it.each([
    ['no length', 3, 3, false],
    ['an end that is not finite', 0, Number.NaN, false],
    ['zero on a logarithmic scale', 0, 1, true],
  ])('of an axis with %s are still numbers', (_, from, to, log) => {
    const across = { title: 'x', unit: 's', from, to, log } as const;
    const { marks } = axes(size, across, { title: 'y', unit: 'N', from: 0, to: 1 });
    expect(JSON.stringify(marks)).not.toMatch(/null|NaN/);
  });
});

describe('a range', () => {
  it('is moved out to whole steps, never in', () => {
    for (const [low, high] of [
      [0, 0.0073],
      [-3.2e-6, 1.1e-6],
      [22, 49.4],
      [5, 5],
    ] as const) {
      const { from, to } = widened(low, high);
      expect(from).toBeLessThanOrEqual(low + 1e-12);
      expect(to).toBeGreaterThanOrEqual(high - 1e-12);
      expect(to).toBeGreaterThan(from);
    }
    expect(widenedLog(3e-9, 7e-7)).toEqual({ from: 2e-9, to: 1e-6 });
    expect(widenedLog(0, 5)).toEqual({ from: 0.005, to: 5 });
  });

  it('leaves out what is not finite', () => {
    const { NaN: nothing, NEGATIVE_INFINITY, POSITIVE_INFINITY } = Number;
    expect(rangeOf([nothing, 2, POSITIVE_INFINITY], [-1, NEGATIVE_INFINITY])).toEqual([-1, 2]);
    expect(rangeOf([nothing])).toEqual([0, 1]);
    expect(greatestOf([nothing, 3], [1])).toBe(3);
  });
});

test('labels at the ends of curves keep a line apart and in order', () => {
  const places = spread([100, 101, 102, 300], 10, 260);
  for (const [k, place] of places.slice(1).entries())
    expect(place - (places[k] ?? 0)).toBeGreaterThanOrEqual(16.999);
  expect(Math.min(...places)).toBeGreaterThanOrEqual(10);
  expect(places.at(-1)).toBe(260);
  expect(spread([50, 120], 10, 260)).toEqual([50, 120]);
});
