import type { ParameterChanges } from '../../shared/parameters/table.ts';
import type { Kit } from '../../shared/scene.ts';
import { sizeLane } from '../../shared/sizing/sizeLane.ts';
import type { Job, JobEntry } from '../../shared/study/job.ts';
import { type LaneChoice, laneLetter, type Study } from '../../shared/study/lane.ts';
import { laneScene } from '../../shared/study/laneScene.ts';
import type { LaneOutcome, LaneProgress } from '../../shared/study/outcome.ts';
import type { LaneState, StudyState, UnitSystem } from './state.ts';

type Kits = Readonly<Record<string, Kit>>;

/** What else than its scene the outcome of a lane depends on. */
const TESTED: readonly JobEntry[] = ['scanLength', 'dailyTime', 'growthLimit', 'wear'];

/** The study on the page, and what is known of it. Whoever draws it subscribes. */
export class StudyStore {
  #state: StudyState;
  readonly #kits: Kits;
  readonly #subscribers = new Set<(state: StudyState) => void>();
  #undo: Study[] = [];
  #redo: Study[] = [];

  constructor(study: Study, kits: Kits) {
    this.#kits = kits;
    this.#state = { study, units: 'metric', lanes: lanesOf(study, kits, []), isRunning: false };
  }

  get state(): StudyState {
    return this.#state;
  }

  subscribe(subscriber: (state: StudyState) => void): void {
    this.#subscribers.add(subscriber);
  }

  undo(): void {
    const before = this.#undo.pop();
    if (!before) return;
    this.#redo.push(this.#state.study);
    this.#use(before);
  }

  redo(): void {
    const after = this.#redo.pop();
    if (!after) return;
    this.#undo.push(this.#state.study);
    this.#use(after);
  }

  setUnits(units: UnitSystem): void {
    this.#take({ ...this.#state, units });
  }

  /** Another study, as it was opened. */
  open(study: Study): void {
    this.#step(study);
  }

  /** Another job for the same drives; those that have to be tuned anew lose their gains. */
  setJob(job: Job): void {
    const { job: was, lanes } = this.#state.study;
    this.#step({
      job,
      lanes: lanes.map((lane) => (sameTask(was, job, lane, this.#kits) ? lane : { ...lane, gains: null })),
    });
  }

  setLanes(lanes: readonly LaneChoice[]): void {
    this.#step({ ...this.#state.study, lanes });
  }

  /** What a lane was tuned to: no step of its own, since it follows from the rest. */
  setGains(index: number, gains: ParameterChanges): void {
    const { study } = this.#state;
    const lanes = study.lanes.map((lane, k) => (k === index ? { ...lane, gains } : lane));
    this.#use({ ...study, lanes });
  }

  setOutcome(index: number, outcome: LaneOutcome): void {
    this.#setLane(index, { outcome, progress: null, trouble: null });
  }

  setProgress(index: number, progress: LaneProgress): void {
    this.#setLane(index, { progress, trouble: null });
  }

  setTrouble(index: number, trouble: string): void {
    this.#setLane(index, { trouble, progress: null });
  }

  /** Lanes are tuned and simulated from now on; what went wrong before may be tried again. */
  startRun(): void {
    this.#setRunning(true, { trouble: null });
  }

  /** Nothing is under way any more. */
  endRun(): void {
    this.#setRunning(false, { progress: null });
  }

  #setRunning(isRunning: boolean, changes: Partial<LaneState>): void {
    const lanes = this.#state.lanes.map((lane) => ({ ...lane, ...changes }));
    this.#take({ ...this.#state, lanes, isRunning });
  }

  #setLane(index: number, changes: Partial<LaneState>): void {
    const lanes = this.#state.lanes.map((lane, k) => (k === index ? { ...lane, ...changes } : lane));
    this.#take({ ...this.#state, lanes });
  }

  #step(study: Study): void {
    this.#undo.push(this.#state.study);
    this.#redo = [];
    this.#use(study);
  }

  #use(study: Study): void {
    const lanes = lanesOf(study, this.#kits, this.#state.lanes, this.#state.study.job);
    this.#take({ ...this.#state, study, lanes });
  }

  #take(state: StudyState): void {
    this.#state = state;
    for (const subscriber of this.#subscribers) subscriber(state);
  }
}

/** The lanes of a study; one that is as it was before keeps what was found of it. */
function lanesOf(
  study: Study,
  kits: Kits,
  before: readonly LaneState[],
  jobBefore: Job = study.job,
): LaneState[] {
  const sameTests = TESTED.every((entry) => study.job.values[entry] === jobBefore.values[entry]);
  return study.lanes.map((choice, index) => {
    const scene = laneScene(study.job, choice, kits);
    const was = before[index];
    const kept = sameTests && was !== undefined && sameScene(was.scene, scene) ? was : null;
    return {
      letter: laneLetter(index),
      choice,
      title: scene.title,
      scene: kept?.scene ?? scene,
      sizing: kept && study.job === jobBefore ? kept.sizing : sizeLane(study.job, scene),
      outcome: kept?.outcome ?? null,
      progress: kept?.progress ?? null,
      trouble: kept?.trouble ?? null,
    };
  });
}

/** Whether a drive that was tuned for one job is tuned for the other as well. */
function sameTask(a: Job, b: Job, lane: LaneChoice, kits: Kits): boolean {
  if (a.values.peakSensitivity !== b.values.peakSensitivity) return false;
  const untuned = { ...lane, gains: null };
  return sameScene(laneScene(a, untuned, kits), laneScene(b, untuned, kits));
}

function sameScene(a: LaneState['scene'], b: LaneState['scene']): boolean {
  return (
    a.form === b.form &&
    JSON.stringify(a.parameters) === JSON.stringify(b.parameters) &&
    JSON.stringify(a.moves) === JSON.stringify(b.moves)
  );
}
