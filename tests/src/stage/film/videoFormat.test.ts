import { expect, it } from 'vitest';
import { videoFormat, videoSize } from '../../../../src/stage/film/videoFormat.ts';

it('is WebM where that can be written, MP4 where only that can, else none', () => {
  expect(videoFormat(() => true)?.ending).toBe('webm');
  expect(videoFormat((type) => type.startsWith('video/mp4'))?.ending).toBe('mp4');
  expect(videoFormat(() => false)).toBeNull();
});

it('has even sides in the proportions of what is filmed, as fine as the screen between 1280 and 1920 pixels', () => {
  expect(videoSize(674, 280, 1)).toEqual({ width: 1280, height: 532 });
  expect(videoSize(1401, 701, 1)).toEqual({ width: 1402, height: 702 });
  expect(videoSize(800, 400, 2)).toEqual({ width: 1600, height: 800 });
  expect(videoSize(700, 1400, 3)).toEqual({ width: 960, height: 1920 });
  expect(videoSize(1000, 0.4, 1)).toEqual({ width: 1280, height: 2 });
});
