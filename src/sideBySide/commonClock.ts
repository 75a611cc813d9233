import { slowPace } from '../../shared/protocol/slowMotion.ts';

/** Refreshes that the common time may be ahead of the slowest candidate: one is on its way while the next is asked for. */
const LEAD = 3;
/** Time over which a long refresh is forgotten, and over which the achieved pace is averaged, s. */
const REFRESH_MEMORY = 0.5;
const TIME_SCALE_MEMORY = 0.5;
/** A longer stall, such as of a page in the background, is not caught up with but counted as lost, s. */
const LONGEST = 0.5;
/** As fast as it goes: asked for is this much more than was achieved of late, and never less than real time. */
const GROWTH = 1.5;

/** How far a candidate has come, s, and whether it takes no further part. */
export interface CandidateTime {
  /** Its simulation has answered for the first time. */
  readonly begun: boolean;
  readonly time: number;
  readonly tripped: boolean;
  /** Waits at an event that is to be seen slowly. */
  readonly isSlow: boolean;
}

/**
 * The time that all candidates have in common: wall-clock time at a pace, never further ahead of the slowest candidate than a few
 * refreshes. So a candidate that falls behind holds back all of them, and what that costs is counted. Pure: it is told what time
 * has passed.
 */
export class CommonClock {
  /** Simulated time that every candidate may reach, s. */
  time = 0;
  running = false;
  /** In slow motion because of an event of a candidate. */
  isSlow = false;
  /** Simulated seconds per second: achieved of late. */
  achieved = 0;
  /** Wall-clock seconds since the last start that could not be kept up with. */
  lost = 0;
  #fresh = true;
  #asked = 1;
  /** The longest time between two refreshes of late, s: a display may draw at uneven intervals. */
  #refresh = 1 / 60;

  /** Simulated seconds per second; Infinity: as fast as it goes. */
  get timeScale(): number {
    return this.#asked;
  }

  setTimeScale(timeScale: number): void {
    this.#asked = timeScale;
    this.#start();
  }

  run(): void {
    this.running = true;
    this.#start();
  }

  pause(): void {
    this.running = false;
  }

  /** What was lost so far no longer counts. */
  forgive(): void {
    this.lost = 0;
  }

  /** Back to the start of all candidates; it goes on as it went. */
  reset(): void {
    this.time = 0;
    this.#start();
  }

  /**
   * A display refresh, `elapsed` seconds after the last. Without a candidate that goes on, nothing does; nor before all have begun,
   * which is no time lost. A candidate at an event holds back the time itself, which is ahead of it then.
   */
  advance(elapsed: number, candidates: readonly CandidateTime[]): void {
    const slowest = slowestOf(candidates);
    if (!this.running || slowest === Number.POSITIVE_INFINITY || elapsed <= 0) return;
    if (!candidates.every(({ begun, tripped }) => begun || tripped)) return;
    const counted = Math.min(elapsed, LONGEST);
    const shorter = this.#refresh + weight(counted, REFRESH_MEMORY) * (counted - this.#refresh);
    this.#refresh = Math.max(counted, shorter);

    const free = this.#asked === Number.POSITIVE_INFINITY;
    this.#slow(candidates.some(({ isSlow, tripped }) => isSlow && !tripped));
    const usual = free ? Math.max(1, GROWTH * this.achieved) : this.#asked;
    const timeScale = this.isSlow ? slowPace(this.#asked) : usual;
    const furthest = slowest + LEAD * this.#refresh * timeScale;
    const bound = Math.min(counted * timeScale, furthest - this.time);
    const step = this.isSlow ? bound : Math.max(0, bound);
    this.time += step;
    if (!free && !this.isSlow) this.lost += elapsed - step / timeScale;
    this.achieved +=
      (this.#fresh ? 1 : weight(elapsed, TIME_SCALE_MEMORY)) * (Math.max(0, step) / elapsed - this.achieved);
    this.#fresh = false;
  }

  #slow(isSlow: boolean): void {
    if (isSlow === this.isSlow) return;
    this.isSlow = isSlow;
    this.#start();
  }

  #start(): void {
    this.lost = 0;
    this.achieved = 0;
    this.#fresh = true;
  }
}

function weight(elapsed: number, memory: number): number {
  return 1 - Math.exp(-elapsed / memory);
}

/** Infinity where no candidate goes on. */
function slowestOf(candidates: readonly CandidateTime[]): number {
  let slowest = Number.POSITIVE_INFINITY;
  for (const { time, tripped } of candidates) if (!tripped && time < slowest) slowest = time;
  return slowest;
}
