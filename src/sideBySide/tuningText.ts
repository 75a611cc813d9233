interface Tuned {
  readonly letter: string;
  readonly choice: { readonly gains: unknown };
}

/** How the candidates are tuned, so that nobody takes a better tuning for a better drive. */
export function tuningText(candidates: readonly Tuned[], peakSensitivity: number): string {
  if (candidates.length === 0) return 'No drive has been chosen yet.';
  const aim = `the same peak sensitivity M_S = ${peakSensitivity}`;
  const letters = (tuned: boolean) =>
    candidates
      .filter(({ choice }) => (choice.gains !== null) === tuned)
      .map(({ letter }) => letter)
      .join(', ');
  if (letters(false) === '') return `Every drive is pretuned to ${aim}.`;
  const untuned = `Not tuned yet, start gains: ${letters(false)}.`;
  return letters(true) === '' ? untuned : `Pretuned to ${aim}: ${letters(true)}. ${untuned}`;
}
