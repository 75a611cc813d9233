import type { Kit, Scene } from '../../shared/scene.ts';
import { chooseLanes } from '../../shared/sizing/chooseLanes.ts';
import { checkJob } from '../../shared/study/checkJob.ts';
import { checkLane, ofLane } from '../../shared/study/checkLane.ts';
import type { Job, JobValues } from '../../shared/study/job.ts';
import type { LaneChoice } from '../../shared/study/lane.ts';
import type { StudyActions, UnitSystem } from './state.ts';
import type { StudyRun } from './studyRun.ts';
import type { StudyStore } from './studyStore.ts';

/** What a person can do to a study, each checked before it reaches the store. */
export class StudyDesk implements StudyActions {
  readonly #store: StudyStore;
  readonly #run: StudyRun;
  readonly #kits: Readonly<Record<string, Kit>>;
  readonly #openOnBench: (scene: Scene) => void;

  constructor(
    store: StudyStore,
    run: StudyRun,
    kits: Readonly<Record<string, Kit>>,
    openOnBench: (scene: Scene) => void,
  ) {
    this.#store = store;
    this.#run = run;
    this.#kits = kits;
    this.#openOnBench = openOnBench;
  }

  changeJob(changes: Partial<JobValues>): string | null {
    return this.#propose((job) => ({ ...job, values: { ...job.values, ...changes } }));
  }

  nameJob(title: string): string | null {
    return this.#propose((job) => ({ ...job, title }));
  }

  useMoves(moves: Job['moves']): string | null {
    return this.#propose((job) => ({ ...job, moves, values: { ...job.values, motion: 'move list' } }));
  }

  setUnits(units: UnitSystem): void {
    this.#store.setUnits(units);
  }

  setLane(index: number, choice: Omit<LaneChoice, 'gains'> | null): string | null {
    const { job, lanes } = this.#store.state.study;
    if (choice === null) {
      this.#store.setLanes(lanes.filter((_, k) => k !== index));
      return null;
    }
    const checked = checkLane(choice, job, this.#kits);
    if ('problems' in checked) return checked.problems[0]!.message;
    this.#store.setLanes([...lanes.slice(0, index), checked.lane, ...lanes.slice(index + 1)]);
    return null;
  }

  chooseLanes(): void {
    this.#store.setLanes(chooseLanes(this.#store.state.study.job, this.#kits));
  }

  simulate(): void {
    void this.#run.start();
  }

  cancel(): void {
    this.#run.cancel();
  }

  openOnBench(index: number): void {
    const lane = this.#store.state.lanes[index];
    if (lane) this.#openOnBench(lane.scene);
  }

  #propose(change: (job: Job) => Job): string | null {
    const { study, units } = this.#store.state;
    const { job, problems } = checkJob(change(study.job), units);
    if (!job) return problems[0]!.message;
    // An own datasheet may leave a drive less room than its kit has.
    for (const [index, lane] of study.lanes.entries()) {
      const checked = checkLane({ ...lane, gains: null }, job, this.#kits);
      if ('problems' in checked) return ofLane(index, checked.problems[0]!).message;
    }
    this.#store.setJob(job);
    return null;
  }
}
