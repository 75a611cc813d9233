import { inUnit, ranged } from '../../shared/core/format.ts';
import type { LoopFigures } from '../../shared/protocol/analysis.ts';

/** Modulus margin from which a loop counts as robust: peak of |S| of 2. Common practice, e.g. Åström, Murray, Feedback Systems, ch. 12. */
const ROBUST = 0.5;

/** A gain reduction margin that is worth a word: a loop with an integrator has one, far away as a rule. Common practice. */
const NEAR_MIN_GAIN = 1 / 3;

interface Verdict {
  readonly kind: 'good' | 'caution' | 'alarm';
  readonly text: string;
}

/** What the figures say of a loop, in a sentence or two. */
export function verdictOf(figures: LoopFigures): Verdict {
  const { stable, spectralRadius, phaseMargin, modulusMargin, gainReduction, crossover, crossovers } =
    figures;
  if (!stable) {
    const growth =
      spectralRadius > 1 ? `: any oscillation grows by ${growthText(spectralRadius)} per sample` : '';
    return {
      kind: 'alarm',
      text: `Unstable${growth}. The figures below are not margins.`,
    };
  }
  if (crossovers.length === 0 || phaseMargin === null)
    return {
      kind: 'caution',
      text: 'Stable. The loop gain never reaches 1: the loop hardly holds the axis.',
    };
  const margin = `${inUnit(phaseMargin.value, '°', 2)} of phase margin at ${ranged(phaseMargin.frequency, 'Hz')}`;
  const little = modulusMargin.value < ROBUST;
  const last = crossovers.at(-1) ?? null;
  const text = [
    `${little ? 'Stable, but close' : 'Stable'}. ${capital(margin)}.`,
    ...(little
      ? [
          `|S| peaks at ${inUnit(1 / modulusMargin.value, '', 2)} at ${ranged(modulusMargin.frequency, 'Hz')}.`,
        ]
      : []),
    ...(crossover !== null && last !== null && last > crossover
      ? [`Above its crossover |L| reaches 1 again, last at ${ranged(last, 'Hz')}.`]
      : []),
    ...(gainReduction !== null && gainReduction.value > NEAR_MIN_GAIN
      ? [`Below ${inUnit(gainReduction.value, '', 2)} times the gain it is unstable as well.`]
      : []),
  ];
  return { kind: little ? 'caution' : 'good', text: text.join(' ') };
}

function growthText(radius: number): string {
  const share = radius - 1;
  return share < 0.01 ? inUnit(share, '%', 2) : `${inUnit(share, '%', 3)}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
