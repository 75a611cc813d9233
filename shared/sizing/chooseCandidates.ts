import { at } from '../core/at.ts';
import { maxMotors } from '../core/preset.ts';
import { DRIVE_TYPES, type DriveType, type Presets } from '../core/scene.ts';
import type { CandidateChoice } from '../study/candidate.ts';
import { candidateScene } from '../study/candidateScene.ts';
import type { Job } from '../study/job.ts';
import { apart, classForce, isSameClass } from './driveClass.ts';
import { sizeCandidate } from './sizeCandidate.ts';

interface Offer {
  readonly choice: CandidateChoice;
  readonly force: number;
  readonly passes: boolean;
}

/**
 * One candidate for each type of drive, comparable: of one class of continuous force, under one job. At the class that is chosen as many types
 * as possible do the job, then as many as possible have motors of it, and then it is the smallest. Each type comes with the size and
 * number of motors that is nearest; a type that has nothing of the class, or cannot do the job at all, still comes, so that it is seen why.
 */
export function chooseCandidates(job: Job, presets: Presets): readonly CandidateChoice[] {
  const types = DRIVE_TYPES.map((driveType) => offers(job, presets, driveType)).filter(
    (found) => found.length > 0,
  );
  const classes = [...new Set(types.flat().map(({ force }) => force))].sort((a, b) => a - b);
  const comparisons = classes.map((force) => {
    const candidates = types.map((sizes) => nearest(sizes, force));
    return {
      candidates,
      passing: candidates.filter(({ passes }) => passes).length,
      ofClass: candidates.filter((candidate) => isSameClass(candidate.force, force)).length,
    };
  });
  // Sorting keeps the smaller class before the larger where nothing else tells them apart.
  const [best] = comparisons.sort((a, b) => b.passing - a.passing || b.ofClass - a.ofClass);
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
        return { choice, force: classForce(choice, presets), passes: sizeCandidate(job, scene).passes };
      }),
    );
}

/** Of one class with a force: one that does the job, with the fewest motors. Without any of its class the nearest. */
function nearest(sizes: readonly Offer[], force: number): Offer {
  const distance = ({ force: own }: Offer) => (isSameClass(own, force) ? 1 : apart(own, force));
  const better = (a: Offer, b: Offer) =>
    distance(a) - distance(b) ||
    Number(b.passes) - Number(a.passes) ||
    a.choice.motorCount - b.choice.motorCount ||
    apart(a.force, force) - apart(b.force, force);
  return at([...sizes].sort(better), 0);
}
