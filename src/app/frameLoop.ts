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
  /** A new frame; its buffers are only lent. `draws`: whether it is to be seen, too. */
  ingest(frame: Frame, draws: boolean): void;
  /** With each display refresh that draws, with the newest value of each channel. `seldom`: not every refresh does. */
  draw(now: Float64Array, seldom: boolean): void;
  /** Whether other work needs the processor more than the picture does. Every frame is taken in all the same. */
  drawsSeldom(): boolean;
}

/** From one picture to the next where it is drawn seldom, ms: a tenth of a second, by the refreshes of a display. It still moves. */
const SELDOM = 95;

/**
 * The one animation loop of the page: asks for a frame with every display refresh and draws what moves. The frame is taken in when it
 * comes, between two refreshes: the page answers to a hand in between, and the next refresh has only the rest to do. Returns what stops it.
 */
export function startFrameLoop(source: FrameSource, sinks: FrameSinks): () => void {
  const now = new Float64Array(CHANNEL_COUNT);
  let spent: Frame | null = null;
  let drawn = Number.NEGATIVE_INFINITY;
  let handle = requestAnimationFrame(refresh);
  source.onFrame = arrive;
  arrive();

  function arrive(): void {
    const frame = source.take();
    if (!frame) return;
    sinks.ingest(frame, isDue(performance.now(), sinks.drawsSeldom()));
    now.set(frame.now);
    spent = frame;
  }

  function refresh(time: number): void {
    handle = requestAnimationFrame(refresh);
    // Asked before drawing, so that the worker fills the next frame meanwhile.
    source.ask(spent);
    spent = null;
    const seldom = sinks.drawsSeldom();
    if (!isDue(time, seldom)) return;
    drawn = time;
    sinks.draw(now, seldom);
  }

  function isDue(time: number, seldom: boolean): boolean {
    return !seldom || time - drawn >= SELDOM;
  }

  return () => {
    source.onFrame = null;
    cancelAnimationFrame(handle);
  };
}
