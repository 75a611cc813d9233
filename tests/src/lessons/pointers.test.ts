import { expect, it } from 'vitest';
import { LESSONS } from '../../../scenes/lessons/index.ts';
import { CHART_PLACES } from '../../../shared/lesson/lesson.ts';
import { ROWS } from '../../../src/charts/rows.ts';
import { selectorOf } from '../../../src/lessons/pointers.ts';

it('every pointer names one place on the page; the table moves, and the stage itself points at it', () => {
  expect(selectorOf({ chart: 'Force' })).toBe('.charts-row[aria-label="Force"]');
  expect(selectorOf({ gauge: 'Winding' })).toBe('.gauge[aria-label="Winding"]');
  expect(selectorOf({ field: 'Kd' })).toBe('#lesson-field-Kd');
  expect(selectorOf({ stage: 'magnifier' })).toBe('.stage-magnifier');
  expect(selectorOf({ stage: 'table' })).toBeNull();
});

it('every chart that can be pointed at is drawn', () => {
  expect(ROWS.map(({ title }) => title)).toEqual(expect.arrayContaining([...CHART_PLACES]));
});

it.each(LESSONS)('“$lesson.title” points at something in every step, and at nothing twice', ({ lesson }) => {
  for (const { title, pointAt } of lesson.steps) {
    const places = pointAt.map((pointer) => JSON.stringify(pointer));
    expect(places.length, title).toBeGreaterThan(0);
    expect(new Set(places).size, title).toBe(places.length);
  }
});
