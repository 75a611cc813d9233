import type { Scene } from '../../shared/core/scene.ts';
import type { AxisStatus, Engine } from '../../shared/protocol/axis.ts';
import { RealTimeWatch } from '../clients/realTimeWatch.ts';
import { Candidate } from './candidate.ts';
import { CommonClock } from './commonClock.ts';
import { Moment } from './moment.ts';

/** Up to four axes that run in lockstep, and the moment of them that is looked at. */
export class CandidatesRun {
  readonly clock = new CommonClock();
  readonly moment = new Moment();
  candidates: readonly Candidate[] = [];
  /** Changes whenever another moment is looked at than the next one of the run. */
  jumps = 0;
  #scenes: readonly string[] = [];
  #slowMotion = false;
  readonly #watch = new RealTimeWatch();
  /** What they are to be integrated by: fixed steps, once the computer has proved too slow for the usual engine. */
  #wanted: Engine = 'odex';

  /** Puts these scenes on the candidates. A change of any begins all of them anew, since time is what they have in common. */
  load(scenes: readonly Scene[]): void {
    const texts = scenes.map((scene) => JSON.stringify(scene));
    const changed = (i: number) => texts[i] !== this.#scenes[i];
    if (texts.length === this.#scenes.length && !texts.some((_, i) => changed(i))) return;
    for (const candidate of this.candidates.slice(scenes.length)) candidate.terminate();
    this.candidates = scenes.map((scene, i) => {
      const candidate = this.candidates[i];
      if (!candidate) return this.#newCandidate(scene);
      if (changed(i)) candidate.load(scene);
      else candidate.reset();
      return candidate;
    });
    this.#scenes = texts;
    this.#startOver();
  }

  /** Once per display refresh, `elapsed` seconds after the last. */
  refresh(elapsed: number): void {
    for (const candidate of this.candidates) candidate.receive();
    if (this.stopped) this.clock.pause();
    this.clock.advance(elapsed, this.candidates);
    this.#holdRealTime();
    const { time } = this;
    for (const candidate of this.candidates) {
      candidate.ask(this.clock.time);
      candidate.show(time);
    }
  }

  /** What integrates them: one that is too stiff for fixed steps has the usual engine still. */
  get engine(): Engine {
    return this.candidates.some(({ engine }) => engine === 'batch') ? 'batch' : 'odex';
  }

  /** Simulated time that is shown, s. */
  get time(): number {
    return this.moment.at(this.latest);
  }

  /** The present, s: what all candidates have reached that go on, so that all of them can show it; else the furthest of any. */
  get latest(): number {
    let [slowest, furthest] = [Number.POSITIVE_INFINITY, 0];
    for (const { time, tripped } of this.candidates) {
      if (!tripped) slowest = Math.min(slowest, time);
      furthest = Math.max(furthest, time);
    }
    return slowest < Number.POSITIVE_INFINITY ? slowest : furthest;
  }

  /** From where on all candidates can be looked back at, s. */
  get oldest(): number {
    let oldest = 0;
    for (const { history } of this.candidates) oldest = Math.max(oldest, history.oldestTime || 0);
    return Math.min(oldest, this.latest);
  }

  /** No candidate goes on. */
  get stopped(): boolean {
    return this.candidates.length > 0 && this.candidates.every((candidate) => candidate.tripped);
  }

  get state(): AxisStatus['state'] {
    if (this.stopped) return 'tripped';
    return this.clock.running ? 'running' : 'paused';
  }

  runOrPause(): void {
    if (this.clock.running) this.clock.pause();
    else {
      this.followLive();
      this.clock.run();
    }
  }

  /** At events of any candidate. */
  setSlowMotion(on: boolean): void {
    this.#slowMotion = on;
    for (const candidate of this.candidates) candidate.setSlowMotion(on);
  }

  /** One hand on all tables, so far from where each was, m; null lets go. */
  pull(offset: number | null): void {
    for (const candidate of this.candidates) candidate.pull(offset);
  }

  reset(): void {
    for (const candidate of this.candidates) candidate.reset();
    this.#startOver();
  }

  /** Looks at a moment, s, while everything rests. */
  lookAt(time: number): void {
    this.clock.pause();
    this.moment.hold(time, this.oldest, this.latest);
    this.jumps++;
  }

  step(by: number): void {
    this.clock.pause();
    this.moment.step(by, this.oldest, this.latest);
    this.jumps++;
  }

  followLive(): void {
    if (this.moment.live) return;
    this.moment.followLive();
    this.jumps++;
  }

  terminate(): void {
    for (const candidate of this.candidates) candidate.terminate();
    this.candidates = [];
    this.#scenes = [];
  }

  #newCandidate(scene: Scene): Candidate {
    const candidate = new Candidate(scene);
    candidate.setSlowMotion(this.#slowMotion);
    if (this.#wanted !== 'odex') candidate.useEngine(this.#wanted);
    return candidate;
  }

  #holdRealTime(): void {
    const { running, isSlow, timeScale, achieved, lost } = this.clock;
    if (this.#wanted === 'batch' || !running || isSlow) return;
    if (!this.#watch.isMissed({ asked: timeScale, achieved, lost })) return;
    this.#wanted = 'batch';
    for (const candidate of this.candidates) candidate.useEngine('batch');
    this.clock.forgive();
  }

  #startOver(): void {
    this.clock.reset();
    this.moment.followLive();
    this.jumps++;
  }
}
