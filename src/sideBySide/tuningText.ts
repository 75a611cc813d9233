interface Tuned {
  readonly letter: string;
  readonly choice: { readonly gains: unknown };
  readonly sizing: { readonly passes: boolean };
}

/**
 * How the candidates are tuned, so that nobody takes a better tuning for a better drive. All that were pretuned kept the same limit; none needs
 * to be at it. What the sizing rules out is not pretuned: its gains are set by rule.
 */
export function tuningText(candidates: readonly Tuned[], peakSensitivity: number): string {
  if (candidates.length === 0) return 'No drive has been chosen yet.';
  const letters = (those: readonly Tuned[]) => those.map(({ letter }) => letter).join(', ');
  const untuned = candidates.filter(({ choice }) => choice.gains === null);
  const withGains = candidates.filter(({ choice }) => choice.gains !== null);
  const tuned = withGains.filter(({ sizing }) => sizing.passes);
  const ruledOut = withGains.filter(({ sizing }) => !sizing.passes);
  const limit = `a peak sensitivity M_S of at most ${peakSensitivity}`;
  const aim = tuned.length > 1 ? `the same limit, ${limit}` : limit;
  const isEach = tuned.length === candidates.length && tuned.length > 1;
  return [
    ...(tuned.length > 0
      ? [isEach ? `Every drive is pretuned to ${aim}.` : `Pretuned to ${aim}: ${letters(tuned)}.`]
      : []),
    ...(untuned.length > 0 ? [`Not tuned yet, start gains: ${letters(untuned)}.`] : []),
    ...(ruledOut.length > 0 ? [`Ruled out by the sizing, start gains: ${letters(ruledOut)}.`] : []),
  ].join(' ');
}
