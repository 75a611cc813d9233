import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C, CHANNEL_COUNT } from '../../shared/core/channels.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { Engine, Frame, MoveFigures, Trip } from '../../shared/protocol/axis.ts';
import { AxisClient } from '../clients/axisClient.ts';
import { type LoggedMove, MoveLog } from '../compare/moveLog.ts';
import { History } from '../history/history.ts';
import type { CandidateTime } from './commonClock.ts';

/** Bins of the history: at 8000 samples a second 4 s of single samples and 16 s in steps of 2 ms; 11 MB. */
const CAPACITIES = [32768, 8192];

/** Of so short a time, s, no history tells more than the newest values: about a sample of the position loop. */
const NEWEST = 2e-4;

/** One axis of several that run in lockstep: its worker, what it did lately, and the moment of it that is shown. */
export class Candidate implements CandidateTime {
  readonly history = new History(CAPACITIES);
  /** Values of each channel at the moment that is shown, in the order of CHANNELS. */
  readonly shown = new Float64Array(CHANNEL_COUNT);
  parameters: Parameters;
  /** Simulated time it has reached, s. */
  time = 0;
  trip: Trip | null = null;
  isSlow = false;
  /** What integrates its plant. */
  engine: Engine = 'odex';
  /** Why its simulation has stopped, in plain words; loading or resetting it starts it again. */
  error: string | null = null;
  readonly #client: AxisClient;
  readonly #now = new Float64Array(CHANNEL_COUNT);
  readonly #moves = new MoveLog();
  #scene: Scene;
  #run = Number.NaN;
  /** Where a hand took hold of the table, in the room, m. */
  #grip: number | null = null;
  /** Frames of the present run belong to the past: another one was asked for. */
  #outdated = false;
  #spent: Frame | null = null;

  constructor(scene: Scene) {
    this.#scene = scene;
    this.parameters = scene.parameters;
    this.#showStart();
    this.#client = new AxisClient(scene, (error) => {
      this.error = error;
    });
  }

  get tripped(): boolean {
    return this.trip !== null || this.error !== null;
  }

  /** Whether it stands still at a moment, s: then what it showed last says nothing to compare with. */
  isStoppedAt(moment: number): boolean {
    return this.error !== null || (this.trip !== null && this.trip.time <= moment);
  }

  get begun(): boolean {
    return !Number.isNaN(this.#run);
  }

  load(scene: Scene): void {
    this.#scene = scene;
    this.parameters = scene.parameters;
    if (this.error === null) this.#client.send('load', scene);
    else this.#restart();
    this.#startOver();
  }

  reset(): void {
    if (this.error === null) this.#client.send('reset');
    else this.#restart();
    this.#startOver();
  }

  /** A hand holds the table so far from where it took hold of it, m; null lets go. */
  pull(offset: number | null): void {
    if (offset === null) this.#grip = null;
    else this.#grip ??= valueAt(this.#now, C.tablePosition) + valueAt(this.#now, C.basePosition);
    this.#client.send('hand', this.#grip === null ? null : this.#grip + (offset ?? 0));
  }

  setSlowMotion(on: boolean): void {
    this.#client.send('setSlowMotion', on);
  }

  useEngine(engine: Engine): void {
    this.#client.send('useEngine', engine);
  }

  /** Takes in what has arrived. */
  receive(): void {
    const frame = this.#client.take();
    this.#spent = frame ?? this.#spent;
    if (!frame || (this.#outdated && frame.run === this.#run)) return;
    this.#outdated = false;
    this.#run = frame.run;
    this.#now.set(frame.now);
    this.history.ingest(frame);
    this.#moves.take(frame.run, frame.status);
    this.time = frame.status.time;
    this.trip = frame.status.trip;
    this.isSlow = frame.status.isSlow;
    this.engine = frame.status.engine;
  }

  /** Asks for what comes next, up to a simulated time, s. */
  ask(time: number): void {
    this.#client.ask(this.#spent, this.begun ? { run: this.#run, time } : null);
    this.#spent = null;
  }

  /** Shows a moment, s; the newest values where it has not come further. */
  show(moment: number): void {
    const isNewest = this.time - moment < NEWEST;
    if (isNewest || !this.history.valuesAt(moment, this.shown)) this.shown.set(this.#now);
  }

  /** The last move that had ended by a moment, s; null before the first. */
  lastMove(moment: number): MoveFigures | null {
    const ended = ({ start, figures }: LoggedMove) => figures !== null && start + figures.duration <= moment;
    return this.#moves.moves.filter(ended).at(-1)?.figures ?? null;
  }

  terminate(): void {
    this.#client.terminate();
  }

  /** Until the first frame has come: at its place, as warm as it starts. */
  #showStart(): void {
    const { start, windingStart, carrierStart, ambient, peakCurrent } = this.parameters;
    this.#now.fill(0);
    for (const place of [C.setpoint, C.motorPosition, C.tablePosition, C.encoderPosition])
      this.#now[place] = start;
    this.#now[C.currentLimit] = peakCurrent;
    this.#now[C.windingTemperature] = windingStart;
    this.#now[C.carrierTemperature] = carrierStart;
    this.#now[C.tableTemperature] = ambient;
    this.#now[C.screwTemperature] = ambient;
    this.shown.set(this.#now);
  }

  /** After a failure. */
  #restart(): void {
    this.error = null;
    this.#client.restart(this.#scene);
  }

  #startOver(): void {
    this.#showStart();
    this.#grip = null;
    this.#outdated = true;
    this.time = 0;
    this.trip = null;
    this.isSlow = false;
  }
}
