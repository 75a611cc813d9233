import { CHANNEL_COUNT, CHANNEL_INDEX, type ChannelName } from '../../../shared/core/channels.ts';
import type { Frame } from '../../../shared/protocol/axis.ts';

/** Current-loop period of the made-up recorder, s, and current-loop periods per record. */
export const TICK = 1 / 16000;
export const DIVIDER = 2;
export const PERIOD = TICK * DIVIDER;

/** Minimum and maximum of the named channels in record `i`; the others stay zero. */
export type Source = (i: number) => Partial<Record<ChannelName, readonly [low: number, high: number]>>;

/** A frame with the records `first` to `first + count - 1` of a recorder that ticks as the worker's does. */
export function frame(first: number, count: number, source: Source, run = 1): Frame {
  const bins = new Float64Array(count * 2 * CHANNEL_COUNT);
  for (let i = 0; i < count; i++) {
    const at = i * 2 * CHANNEL_COUNT;
    const set = (name: ChannelName, [low, high]: readonly [number, number]) => {
      bins[at + 2 * CHANNEL_INDEX[name]] = low;
      bins[at + 2 * CHANNEL_INDEX[name] + 1] = high;
    };
    const tick = (first + i) * DIVIDER;
    set('time', [tick * TICK, (tick + DIVIDER - 1) * TICK]);
    for (const [name, range] of Object.entries(source(first + i))) set(name as ChannelName, range);
  }
  return {
    run,
    bins,
    count,
    now: new Float64Array(CHANNEL_COUNT),
    status: {
      state: 'running',
      time: (first + count) * PERIOD,
      tick: (first + count) * DIVIDER,
      timeScale: 1,
      achievedTimeScale: 1,
      lostTime: 0,
      isSlow: false,
      trip: null,
      engine: 'odex',
      notices: [],
      energyResidual: 0,
      lastMove: null,
      finished: [],
      moveStart: null,
    },
  };
}

/** Repeatable numbers in [0, 1): mulberry32 (public domain, from memory). */
export function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
