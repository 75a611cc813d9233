import { describe, expect, it } from 'vitest';
import {
  fallsBehind,
  measuredTimeScaleText,
  REAL_TIME,
  TIME_SCALES,
  timeScaleText,
} from '../../../src/ui/transport/timeScale.ts';

describe('the time scale', () => {
  it('runs from a thousandth to as fast as it goes, with real time between', () => {
    expect(TIME_SCALES[0]).toBe(0.001);
    expect(TIME_SCALES.at(-1)).toBe(Number.POSITIVE_INFINITY);
    expect(TIME_SCALES[REAL_TIME]).toBe(1);
    expect([...TIME_SCALES].sort((a, b) => a - b)).toEqual([...TIME_SCALES]);
  });

  it.each([
    [0.001, '1/1000 of real time'],
    [0.5, '1/2 of real time'],
    [1, 'real time'],
    [5, '5 × real time'],
    [Number.POSITIVE_INFINITY, 'as fast as possible'],
  ])('%d reads as %s', (timeScale, text) => expect(timeScaleText(timeScale)).toBe(text));

  it.each([
    [1 / 585589, 'less than 1/1000 of real time'],
    [0, '0 × real time'],
    [0.001, '1/1000 of real time'],
    [0.43, '0.43 × real time'],
    [1, '1.00 × real time'],
    [12.4, '12 × real time'],
  ])('a measured %d reads as %s', (timeScale, text) => expect(measuredTimeScaleText(timeScale)).toBe(text));

  it('is behind when a tenth is missing, but not by what any start loses, nor when going as fast as it goes', () => {
    expect(fallsBehind(1, 0.43, 2)).toBe(true);
    expect(fallsBehind(1, 0.43, 0.05)).toBe(false);
    expect(fallsBehind(1, 0.97, 2)).toBe(false);
    expect(fallsBehind(Number.POSITIVE_INFINITY, 3, 2)).toBe(false);
  });
});
