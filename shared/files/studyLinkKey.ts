/** What the fragment of a link to a study begins with; any other fragment is a scene's. */
export const STUDY_KEY = 'study';

export function isStudyLink(fragment: string): boolean {
  return new RegExp(`^#?${STUDY_KEY}=`).test(fragment);
}
