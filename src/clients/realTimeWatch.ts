import { fallsBehind } from '../ui/transport/timeScale.ts';

/** What is lost while real time is not held before that counts as lasting, s of the clock. */
const LASTING = 1;
/** A single stall, as of a page that opens or comes back from the background, counts no more than this, s. */
const STALL = 0.1;

/** How fast a run was asked to go, simulated seconds per second, how fast it went of late, and what it lost since it was started, s. */
interface Pace {
  readonly asked: number;
  readonly achieved: number;
  readonly lost: number;
}

/** Tells a computer that is too slow for a run from one that was held up for a moment. It is told of every frame. */
export class RealTimeWatch {
  #lost = 0;
  #missed = 0;

  /** Whether real time, or the slower pace that was asked for, has not been held for so long that it will not be. */
  isMissed({ asked, achieved, lost }: Pace): boolean {
    const since = Math.max(0, lost - this.#lost);
    this.#lost = lost;
    const isBehind = fallsBehind(Math.min(asked, 1), achieved, lost);
    this.#missed = isBehind ? this.#missed + Math.min(since, STALL) : 0;
    return this.#missed >= LASTING;
  }
}
