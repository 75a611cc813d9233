import { describe, expect, it, test } from 'vitest';
import { axes, widened, widenedLog } from '../../../src/plot/svg/axes.ts';
import { spread } from '../../../src/plot/svg/endLabels.ts';
import { labelsIn, numberOf } from './readDrawing.ts';

const size = { width: 640, height: 300 };

describe('ticks', () => {
  it('stand where their values are, in the unit that the axis names', () => {
    const { drawn, x, y } = axes(
      size,
      { title: 'Way', unit: 'mm', from: 0, to: 0.06 },
      { title: 'Error', unit: 'mm', from: -4e-6, to: 4e-6 },
    );
    expect(drawn.text).toContain('>Way in mm<');
    expect(drawn.text).toContain('>Error in µm<');
    const along = labelsIn(drawn, 'middle').filter(([label]) => /\d/.test(label));
    const up = labelsIn(drawn, 'end');
    expect(along.length).toBeGreaterThan(3);
    expect(up.length).toBeGreaterThan(3);
    for (const [label, place] of along) expect(x.at(numberOf(label) * 1e-3)).toBeCloseTo(place, 1);
    for (const [label, , place] of up) expect(y.at(numberOf(label) * 1e-6)).toBeCloseTo(place - 5, 1);
  });

  it('of hours are whole hours, not round seconds', () => {
    const { drawn } = axes(
      size,
      { title: 'Duty', unit: 'h', from: 0, to: 28800 },
      { title: 'T', unit: '°C', from: 20, to: 60 },
    );
    const along = labelsIn(drawn, 'middle').map(([label]) => label);
    expect(along).toEqual(['0', '1', '2', '3', '4', '5', '6', '7', '8', 'Duty in h']);
  });

  it('of a logarithmic axis are as far apart for each power of ten, each in its own unit', () => {
    const { drawn } = axes(
      size,
      { title: 'Period', unit: 'mm', from: 1e-6, to: 0.1, log: true },
      { title: 'Amplitude', unit: '%', from: 1e-4, to: 1, log: true },
    );
    const along = labelsIn(drawn, 'middle').filter(([label]) => /^10* /.test(label));
    expect(along.map(([label]) => label)).toEqual(['1 µm', '10 µm', '100 µm', '1 mm', '10 mm', '100 mm']);
    const apart = along.slice(1).map(([, place], k) => place - along[k]![1]);
    for (const each of apart) expect(each).toBeCloseTo(apart[0]!, 1);
  });
});

test('a range is moved out to whole steps, never in', () => {
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
});

test('labels at the ends of curves keep a line apart and in order', () => {
  const places = spread([100, 101, 102, 300], 10, 260);
  expect(places.slice(1).every((place, k) => place - places[k]! >= 16.999)).toBe(true);
  expect(places[0]!).toBeGreaterThanOrEqual(10);
  expect(places.at(-1)).toBe(260);
  expect(spread([50, 120], 10, 260)).toEqual([50, 120]);
});
