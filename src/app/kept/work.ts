import { SHELF } from '../../../scenes/index.ts';
import { PARAMETER_NAMES } from '../../../shared/core/parameters/table.ts';
import { WAYBENCH_VERSION } from '../../../shared/core/version.ts';
import { readScene, writeScene } from '../../../shared/files/sceneFile.ts';
import type { Study } from '../../../shared/study/candidate.ts';
import { type Bench, benchOf, presentScene } from '../../bench/bench.ts';
import type { Timeline } from '../../bench/undo.ts';

/** All that a person made on a page, as it is kept. */
export interface Work {
  /** What the steps of undo look like: those of another version are not used. */
  readonly layout: string;
  /** When it was kept, ms. */
  readonly kept: number;
  /** The scene as it is set, as a file: any later version reads it. */
  readonly scene: string;
  readonly bench: Timeline<Bench>;
  /** Null: no study was opened. */
  readonly study: KeptStudy | null;
}

/** A study as the study room keeps it; what was simulated is kept apart, by all that it depends on. */
export interface KeptStudy {
  readonly title: string;
  /** As a file. */
  readonly text: string;
  readonly steps: Timeline<Study> | null;
  readonly isShown: boolean;
}

/** Steps of undo that are kept, back and forth: half a megabyte. */
export const STEPS = 100;

const LAYOUT = [WAYBENCH_VERSION, ...PARAMETER_NAMES].join();

export function workOf(bench: Timeline<Bench>, study: KeptStudy | null, now: number): Work {
  return { layout: LAYOUT, kept: now, scene: writeScene(presentScene(bench.present.value)), bench, study };
}

/** What can be gone on with of kept work; of another version it is the present scene and study, without the steps that led there. */
export function readWork(work: Work): Pick<Work, 'bench' | 'study'> | null {
  const { bench, study } = work;
  if (work.layout === LAYOUT) return { bench, study };
  const read = readScene(work.scene, SHELF);
  if ('problems' in read) return null;
  const present = { value: benchOf(read.scene), text: '', gesture: null };
  return { bench: { past: [], present, future: [] }, study: study && { ...study, steps: null } };
}

/** What was worked on, in a few words. */
export function workText({ bench: { past, present }, study }: Work): string {
  const { title } = present.value.origin;
  const changes = past.length === 1 ? '1 change' : `${past.length} changes`;
  const onBench = past.length > 0 ? `${title}, ${changes}` : title;
  return study ? `${onBench}; study ${study.title}` : onBench;
}
