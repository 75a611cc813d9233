import { mostMotors } from '../kit.ts';
import { FORMS, type Form, type Kit } from '../scene.ts';
import type { Job } from '../study/job.ts';
import type { LaneChoice } from '../study/lane.ts';
import { laneScene } from '../study/laneScene.ts';
import { apart, classForce, isSameClass } from './driveClass.ts';
import { sizeLane } from './sizeLane.ts';

type Kits = Readonly<Record<string, Kit>>;

interface Candidate {
  readonly choice: LaneChoice;
  readonly force: number;
  readonly passes: boolean;
}

/**
 * One lane for each form of drive, comparable: of one class of continuous force, under one job. At the class that is chosen as many forms
 * as possible do the job, then as many as possible have motors of it, and then it is the smallest. Each form comes with the size and
 * number of motors that is nearest; a form that has nothing of the class, or cannot do the job at all, still comes, so that it is seen why.
 */
export function chooseLanes(job: Job, kits: Kits): readonly LaneChoice[] {
  const forms = FORMS.map((form) => candidates(job, kits, form)).filter((found) => found.length > 0);
  const classes = [...new Set(forms.flat().map(({ force }) => force))].sort((a, b) => a - b);
  const comparisons = classes.map((force) => {
    const lanes = forms.map((form) => nearest(form, force));
    return {
      lanes,
      passing: lanes.filter(({ passes }) => passes).length,
      ofClass: lanes.filter((lane) => isSameClass(lane.force, force)).length,
    };
  });
  // Sorting keeps the smaller class before the larger where nothing else tells them apart.
  const [best] = comparisons.sort((a, b) => b.passing - a.passing || b.ofClass - a.ofClass);
  return best ? best.lanes.map(({ choice }) => choice) : [];
}

/** Every size of a form in every number of motors. */
function candidates(job: Job, kits: Kits, form: Form): Candidate[] {
  return Object.keys(kits)
    .filter((kit) => kits[kit]!.form === form)
    .flatMap((kit) =>
      Array.from({ length: mostMotors(kits[kit]!) }, (_, k): Candidate => {
        const choice: LaneChoice = { kit, motorCount: k + 1, own: {}, gains: null };
        const scene = laneScene(job, choice, kits);
        return { choice, force: classForce(choice, kits), passes: sizeLane(job, scene).passes };
      }),
    );
}

/** Of one class with a force: one that does the job, with the fewest motors. Without any of its class the nearest. */
function nearest(form: readonly Candidate[], force: number): Candidate {
  const distance = ({ force: own }: Candidate) => (isSameClass(own, force) ? 1 : apart(own, force));
  const better = (a: Candidate, b: Candidate) =>
    distance(a) - distance(b) ||
    Number(b.passes) - Number(a.passes) ||
    a.choice.motorCount - b.choice.motorCount ||
    apart(a.force, force) - apart(b.force, force);
  return [...form].sort(better)[0]!;
}
