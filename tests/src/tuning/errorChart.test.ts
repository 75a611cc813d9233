import { expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { svg } from '../../../src/plot/svg.ts';
import { errorChart, errorRows } from '../../../src/tuning/pretune/errorChart.ts';
import { marksOf } from '../plot/readDrawing.ts';

const course = (peak: number) => ({
  time: Float64Array.from({ length: 50 }, (_, k) => k / 50),
  error: Float64Array.from({ length: 50 }, (_, k) => peak * Math.sin(k)),
});

it('two tunings are in one frame, told apart by dashes and by the names at their ends', () => {
  const drawing = errorChart([
    { name: 'textbook', course: course(2e-6) },
    { name: 'pretuned', course: course(3e-7) },
  ]);
  const text = svg(drawing).text;
  expect(text).toContain('>textbook<');
  expect(text).toContain('>pretuned<');
  expect(text).toContain('>Error in µm<');
  expect(text).not.toMatch(/NaN|Infinity/);
  expect(marksOf(drawing.marks, 'curve').map(({ pen }) => pen?.dash)).toEqual(['dotted', undefined]);
});

it('structures stand one below the other on one scale', () => {
  const rows = errorRows([
    { name: 'PID on position', course: course(2e-6) },
    { name: 'Cascade', course: course(1e-7) },
  ]);
  const ticks = rows.map((row) => svg(row).text.match(/>[−\d.]+</g));
  expect(rows).toHaveLength(2);
  expect(ticks[0]).toEqual(ticks[1]);
  expect(svg(at(rows, 1)).text).toContain('>Cascade<');
});
