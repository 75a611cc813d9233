import type { StudyState } from './state.ts';

/** Says whether any of the values is another than when it was last asked; true at first. */
export function watchChanges(): (...values: readonly unknown[]) => boolean {
  let last: readonly unknown[] | null = null;
  return (...values) => {
    const before = last;
    last = values;
    return before?.length !== values.length || values.some((value, k) => value !== before[k]);
  };
}

/** Whether two states hold the same job and the same results, so that the verdict on one is that on the other. */
export function sameResults(a: StudyState, b: StudyState): boolean {
  const results = ({ study, candidates }: StudyState) => [
    study.job,
    ...candidates.flatMap(({ letter, choice, title, scene, sizing, outcome }) => [
      letter,
      choice,
      title,
      scene,
      sizing,
      outcome,
    ]),
  ];
  const [ofA, ofB] = [results(a), results(b)];
  return ofA.length === ofB.length && ofA.every((value, k) => value === ofB[k]);
}

/** Says whether what was simulated, or how it is read, has changed: progress alone has nothing drawn anew. */
export function watchResults(): (state: StudyState) => boolean {
  const isNew = watchChanges();
  return ({ units, study, candidates }) =>
    isNew(units, study.job, ...candidates.flatMap(({ letter, scene, outcome }) => [letter, scene, outcome]));
}
