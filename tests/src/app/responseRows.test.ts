import { expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { responseRows } from '../../../src/app/save/responseRows.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';

const analysis = analyse(DEFAULT_SCENE.parameters, startingPoint(DEFAULT_SCENE.parameters));
const rows = responseRows(analysis);
const column = (name: string) => {
  const index = at(rows, 0).indexOf(name);
  expect(index).toBeGreaterThanOrEqual(0);
  return rows.slice(1).map((row) => Number(at(row, index)));
};

it('the table of responses has every frequency, in dB and degrees', () => {
  expect(rows).toHaveLength(analysis.frequency.length + 1);
  const cells = rows.slice(1).flat();
  expect(cells.every((cell) => Number.isFinite(Number(cell)))).toBe(true);
});

// S + T = 1 at every frequency, whatever the loop.
it('its sensitivity and closed loop add up to 1', () => {
  const complex = (name: string) => {
    const [size, angle] = [column(`${name} [dB]`), column(`${name} [deg]`)];
    return size.map((value, k) => {
      const [r, w] = [10 ** (value / 20), (at(angle, k) * Math.PI) / 180];
      return { re: r * Math.cos(w), im: r * Math.sin(w) };
    });
  };
  const [S, T] = [complex('S'), complex('T')];
  S.forEach(({ re, im }, k) => {
    expect(re + at(T, k).re).toBeCloseTo(1, 9);
    expect(im + at(T, k).im).toBeCloseTo(0, 9);
  });
});
