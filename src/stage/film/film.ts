import { CaptionedStill, type CaptionLine } from '../still.ts';
import { type VideoFormat, videoSize } from './videoFormat.ts';

/** Pictures per second at most, and bits per second. */
const RATE = 30;
const BITS = 8e6;

/** A video that is being recorded, of all that is seen in the place of the stage. It stops by itself at its limit. */
export class Film {
  readonly #still: CaptionedStill;
  readonly #recorder: MediaRecorder;
  readonly #parts: Blob[] = [];
  readonly #began = performance.now();
  readonly #end: number;
  readonly #host: HTMLElement;

  /** `limit` in seconds; `done` is called once, with null where the browser gave up. */
  constructor(host: HTMLElement, { type }: VideoFormat, limit: number, done: (video: Blob | null) => void) {
    this.#host = host;
    const { width, height } = CaptionedStill.sizeOf(host);
    this.#still = new CaptionedStill(videoSize(width, height, devicePixelRatio));
    this.#recorder = new MediaRecorder(this.#still.canvas.captureStream(RATE), {
      mimeType: type,
      videoBitsPerSecond: BITS,
    });
    let failed = false;
    this.#recorder.ondataavailable = ({ data }) => this.#parts.push(data);
    this.#recorder.onerror = () => {
      failed = true;
    };
    this.#recorder.onstop = () => {
      clearTimeout(this.#end);
      const video = new Blob(this.#parts, { type });
      done(failed || video.size === 0 ? null : video);
    };
    this.#recorder.start();
    this.#end = window.setTimeout(() => this.stop(), 1000 * limit);
  }

  /** Seconds since it began. */
  get length(): number {
    return (performance.now() - this.#began) / 1000;
  }

  /** Adds a picture, right after the stage has been drawn. */
  take(line: CaptionLine): void {
    this.#still.take(this.#host, line);
  }

  stop(): void {
    if (this.#recorder.state !== 'inactive') this.#recorder.stop();
  }
}
