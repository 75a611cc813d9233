import { expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import type { PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';
import { pretuneJson, pretuneRows } from '../../../src/tuning/pretune/pretuneRows.ts';

const point = (changes: Partial<TuningPoint>): TuningPoint => ({
  origin: 'pretuned',
  label: 'one notch',
  changes: { Kp: 1e6, filter1: 'notch' },
  peakSensitivity: 1.5,
  phaseMargin: Math.PI / 4,
  gainMargin: 3,
  crossover: 120,
  settlingTime: 0,
  rmsError: 1e-7,
  peakError: 5e-7,
  rmsCurrent: 2,
  peakCurrent: 5,
  rmsForce: 90,
  trip: null,
  ...changes,
});
const best = point({});
const textbook = point({
  origin: 'textbook',
  label: 'lead ratios',
  changes: { Kp: 5e5, Kd: 4000 },
  settlingTime: null,
});
const result: PretuneResult = {
  goal: { kind: 'settling', window: 1e-6, sensitivityLimit: 1.6 },
  judged: 'A move.',
  figure: 'settling time',
  best,
  textbook,
  points: [textbook, best],
  courses: { best: { time: Float64Array.of(0), error: Float64Array.of(0) }, textbook: null },
  choices: [],
  robustness: [],
};

it('the table has each tuning once, the recommended first, with all gains', () => {
  const rows = pretuneRows(result);
  const head = at(rows, 0);
  expect(rows).toHaveLength(3);
  const cell = (row: number, name: string) => at(at(rows, row), head.indexOf(name));
  expect([cell(1, 'tuning'), cell(2, 'tuning')]).toEqual(['recommended', 'textbook']);
  expect(Number(cell(1, 'phase margin [deg]'))).toBeCloseTo(45, 12);
  expect([cell(1, 'settling time [s]'), cell(2, 'settling time [s]')]).toEqual(['0', '']);
  const gains = [cell(1, 'Kp'), cell(1, 'filter1'), cell(1, 'Kd'), cell(2, 'Kd')];
  expect(gains).toEqual(['1000000', 'notch', '', '4000']);
});

it('as JSON it holds the same points', () => {
  const read = JSON.parse(pretuneJson(result));
  expect(read.waybench).toBe('pretuning');
  expect(read.points).toEqual(result.points);
  expect(read.courses).toBeUndefined();
});
