/** What the fragment of a link to a lesson begins with. */
export const LESSON_KEY = 'lesson';

export function isLessonLink(fragment: string): boolean {
  return new RegExp(`^#?${LESSON_KEY}=`).test(fragment);
}
