import { LESSON_KEY } from './lessonLinkKey.ts';

/** The fragment of a link to a step, from 0, of a lesson of the shelf: `lesson=slow-scan&step=2`, steps counted from 1. */
export function lessonLink(id: string, step: number): string {
  return `${LESSON_KEY}=${id}&step=${step + 1}`;
}

/** Total: without a legal step, the first. */
export function readLessonLink(fragment: string): { readonly id: string; readonly step: number } {
  const id = new RegExp(`^#?${LESSON_KEY}=([^&]*)`).exec(fragment)?.[1] ?? '';
  const step = /&step=(\d{1,3})$/.exec(fragment)?.[1];
  return { id, step: Math.max(0, Number(step ?? 1) - 1) };
}
