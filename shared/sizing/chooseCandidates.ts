import { at } from '../core/at.ts';
import { maxMotors } from '../core/preset.ts';
import { DRIVE_TYPES, type DriveType, type Presets } from '../core/scene.ts';
import type { CandidateChoice } from '../study/candidate.ts';
import { candidateScene } from '../study/candidateScene.ts';
import type { Job } from '../study/job.ts';
import { apart, COMPARABLE, isAlike, ratedForce } from './comparable.ts';
import { sizeCandidate } from './sizeCandidate.ts';

interface Offer {
  readonly choice: CandidateChoice;
  readonly force: number;
  /** What drives are compared by; null where this one has no such thing. */
  readonly measure: number | null;
  readonly passes: boolean;
}

/**
 * One candidate for each type of drive, alike in what the job compares by. Of all ways to do so, the one in which as many types as possible do
 * the job, then as many of these as possible are alike, then the motors are the smallest. Each type comes with the size and number of motors that
 * is nearest; a type that has nothing alike, or cannot do the job at all, still comes, so that it is seen why.
 */
export function chooseCandidates(job: Job, presets: Presets): readonly CandidateChoice[] {
  const types = DRIVE_TYPES.map((driveType) => offers(job, presets, driveType)).filter(
    (found) => found.length > 0,
  );
  const measures = new Set(types.flat().map(({ measure }) => measure ?? Number.NaN));
  const comparisons = [...measures]
    .filter((measure) => measure > 0 && Number.isFinite(measure))
    .map((measure) => {
      const candidates = types.map((sizes) => nearest(sizes, measure));
      return {
        candidates,
        passing: candidates.filter(({ passes }) => passes).length,
        alike: candidates.filter(
          (each) => each.passes && each.measure !== null && isAlike(each.measure, measure),
        ).length,
        force: candidates.reduce((sum, { force }) => sum + force, 0),
      };
    });
  const [best] = comparisons.sort((a, b) => b.passing - a.passing || b.alike - a.alike || a.force - b.force);
  return best ? best.candidates.map(({ choice }) => choice) : [];
}

/** Every size of a drive type with every number of motors. */
function offers(job: Job, presets: Presets, driveType: DriveType): Offer[] {
  return Object.entries(presets)
    .filter(([, preset]) => preset.driveType === driveType)
    .flatMap(([id, preset]) =>
      Array.from({ length: maxMotors(preset) }, (_, k): Offer => {
        const choice: CandidateChoice = { preset: id, motorCount: k + 1, own: {}, gains: null };
        const scene = candidateScene(job, choice, presets);
        const sizing = sizeCandidate(job, scene);
        return {
          choice,
          force: ratedForce(choice, presets),
          measure: COMPARABLE[job.values.comparableBy].of({ scene, sizing }),
          passes: sizing.passes,
        };
      }),
    );
}

/**
 * Of those alike in a measure one that does the job, with the fewest motors; without any alike the nearest. Where the measure means nothing, the
 * smallest that does the job.
 */
function nearest(sizes: readonly Offer[], measure: number): Offer {
  const distance = ({ measure: own }: Offer) =>
    own === null || isAlike(own, measure) ? 1 : apart(own, measure);
  const better = (a: Offer, b: Offer) =>
    distance(a) - distance(b) ||
    Number(b.passes) - Number(a.passes) ||
    a.choice.motorCount - b.choice.motorCount ||
    apart(a.measure ?? a.force, measure) - apart(b.measure ?? b.force, measure);
  return at([...sizes].sort(better), 0);
}
