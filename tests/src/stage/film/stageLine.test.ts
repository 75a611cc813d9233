import { expect, it } from 'vitest';
import { SCENES } from '../../../../scenes/index.ts';
import { at } from '../../../../shared/core/at.ts';
import type { AxisStatus } from '../../../../shared/protocol/axis.ts';
import { benchOf } from '../../../../src/bench/bench.ts';
import { stageLine } from '../../../../src/stage/film/stageLine.ts';

const bench = benchOf(at(SCENES, 0));
const status = {
  state: 'running',
  time: 1.2345,
  timeScale: 1 / 20,
  achievedTimeScale: 1 / 20,
  lostTime: 0,
  isSlow: false,
} as AxisStatus;

it('names scene and drive, the simulated time and the pace', () => {
  const [title, time] = stageLine(bench, status);
  expect(title).toBe('Mould shuttle, press to measuring station: Tubular motor, ironless');
  expect(time).toBe('1.234 s, 1/20 of real time');
  expect(stageLine(bench, { ...status, state: 'paused' })[1]).toBe('1.234 s, paused');
});

it('tells the pace that was reached where it is not the one that was asked for', () => {
  const slower = { ...status, timeScale: 1, achievedTimeScale: 0.5, lostTime: 3 };
  expect(stageLine(bench, slower)[1]).toBe('1.234 s, 0.50 × real time');
  const slowed = { ...status, timeScale: 1, isSlow: true };
  expect(stageLine(bench, slowed)[1]).toBe('1.234 s, 1/20 of real time');
  expect(stageLine(bench, { ...slower, timeScale: Number.POSITIVE_INFINITY })[1]).toContain('0.50 ×');
});
