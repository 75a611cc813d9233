/** Whether whoever is in front of the screen has asked for as little motion on it as there can be. */
export const isMotionUnwelcome = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;
