import { expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { CHANNEL_COUNT } from '../../../shared/core/channels.ts';
import { Recorder } from '../../../workers/run/recorder.ts';

const STRIDE = 2 * CHANNEL_COUNT;

/** Records one tick per bin, with the number of the tick on every channel, until the recorder is full. */
function fill(recorder: Recorder, tick: number): number {
  while (!recorder.full) {
    recorder.closeBin();
    recorder.take(new Float64Array(CHANNEL_COUNT).fill(tick++));
  }
  return tick;
}

it('loses no tick and repeats none when it runs full and its buffers come back', () => {
  const recorder = new Recorder(4);
  const seen: number[] = [];
  let spare: Float64Array<ArrayBuffer> | null = null;
  let tick = 0;
  for (let round = 0; round < 4; round++) {
    tick = fill(recorder, tick);
    const { bins, count } = recorder.hand(spare);
    for (let bin = 0; bin < count; bin++) {
      expect(bins[bin * STRIDE + 1]).toBe(bins[bin * STRIDE]);
      seen.push(at(bins, bin * STRIDE));
    }
    spare = bins;
  }
  expect(seen).toEqual(seen.map((_, i) => i));
  expect(seen).toHaveLength(16);
});
