import { CHANNEL_COUNT } from '../../shared/core/channels.ts';
import type { Frame } from '../../shared/protocol/axis.ts';

/** Where frames come from; `axisClient.ts` is one. */
interface FrameSource {
  /** Hears that a frame has come. */
  onFrame: (() => void) | null;
  take(): Frame | null;
  ask(spent: Frame | null): void;
}

interface FrameSinks {
  /** A new frame; its buffers are only lent. */
  ingest(frame: Frame): void;
  /** Once per display refresh, with the newest value of each channel. */
  draw(now: Float64Array): void;
}

/**
 * The one animation loop of the page: asks for a frame with every display refresh and draws what moves. The frame is taken in when it
 * comes, between two refreshes: the page answers to a hand in between, and the next refresh has only the rest to do. Returns what stops it.
 */
export function startFrameLoop(source: FrameSource, sinks: FrameSinks): () => void {
  const now = new Float64Array(CHANNEL_COUNT);
  let spent: Frame | null = null;
  let handle = requestAnimationFrame(refresh);
  source.onFrame = arrive;
  arrive();

  function arrive(): void {
    const frame = source.take();
    if (!frame) return;
    sinks.ingest(frame);
    now.set(frame.now);
    spent = frame;
  }

  function refresh(): void {
    handle = requestAnimationFrame(refresh);
    // Asked before drawing, so that the worker fills the next frame meanwhile.
    source.ask(spent);
    spent = null;
    sinks.draw(now);
  }

  return () => {
    source.onFrame = null;
    cancelAnimationFrame(handle);
  };
}
