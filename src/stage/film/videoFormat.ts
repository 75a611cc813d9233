/** A form in which a video can be written. */
export interface VideoFormat {
  /** As the browser's recorder is told. */
  readonly type: string;
  /** Of the file's name. */
  readonly ending: 'webm' | 'mp4';
}

/** In order of preference: VP8 takes the least of a processor that also computes the axis. */
const FORMATS: readonly VideoFormat[] = [
  { type: 'video/webm;codecs=vp8', ending: 'webm' },
  { type: 'video/webm', ending: 'webm' },
  { type: 'video/mp4;codecs=avc1.42E028', ending: 'mp4' },
  { type: 'video/mp4', ending: 'mp4' },
];

/** The first that a browser can write; null: none. */
export function videoFormat(canWrite: (type: string) => boolean): VideoFormat | null {
  return FORMATS.find(({ type }) => canWrite(type)) ?? null;
}

/** Pixels of the longer side: fine enough for its letters on a projector, and no more than needed. */
const [LEAST, LARGEST] = [1280, 1920];

/** Pixels of a video of something `width` by `height` CSS pixels large: even, as encoders want them. */
export function videoSize(
  width: number,
  height: number,
  pixelRatio: number,
): { width: number; height: number } {
  const longer = Math.max(width, height);
  const scale = Math.min(Math.max(pixelRatio, LEAST / longer), LARGEST / longer);
  const even = (x: number) => Math.max(2 * Math.round((x * scale) / 2), 2);
  return { width: even(width), height: even(height) };
}
