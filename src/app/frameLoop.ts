import { CHANNEL_COUNT } from '../../shared/core/channels.ts';
import type { Frame } from '../../shared/protocol/axis.ts';

/** Where frames come from; `axisClient.ts` is one. */
interface FrameSource {
  take(): Frame | null;
  ask(spent: Frame | null): void;
}

interface FrameSinks {
  /** A new frame; its buffers are only lent. */
  ingest(frame: Frame): void;
  /** Once per display refresh, with the newest value of each channel. */
  draw(now: Float64Array): void;
}

/** The one animation loop of the page: frame in, everything drawn, next frame asked for. Returns what stops it. */
export function startFrameLoop(source: FrameSource, sinks: FrameSinks): () => void {
  const now = new Float64Array(CHANNEL_COUNT);
  let handle = requestAnimationFrame(refresh);

  function refresh(): void {
    handle = requestAnimationFrame(refresh);
    const frame = source.take();
    if (frame) {
      sinks.ingest(frame);
      now.set(frame.now);
    }
    // Asked before drawing, so that the worker fills the next frame meanwhile.
    source.ask(frame);
    sinks.draw(now);
  }

  return () => cancelAnimationFrame(handle);
}
