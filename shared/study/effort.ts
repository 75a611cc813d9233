import { inUnit, ranged } from '../core/format.ts';
import type { Scene } from '../core/scene.ts';
import type { CandidateChoice } from './candidate.ts';
import type { Job, JobValues } from './job.ts';
import { chosenParts, type Effort, PART_LABELS, partEffort } from './parts.ts';

/** A part that is bought, by the effort that it takes. */
export interface BoughtPart {
  readonly label: string;
  readonly effort: Effort;
  /** Pieces, or metres of what is bought by the metre. */
  readonly quantity: number;
}

/** Amplifiers up to these continuous currents take little or a medium effort, A RMS. Common practice, no source. */
const SMALL_AMPLIFIER = 4;
const MEDIUM_AMPLIFIER = 12;

/**
 * What a candidate consists of besides what is the same for all (bed, table, control). Efforts of common practice, no source: a servomotor is
 * bought everywhere; coil units and magnet tracks are not.
 * @param trackLength of all magnet tracks together, m
 */
export function boughtParts(
  { values }: Job,
  choice: CandidateChoice,
  { parameters: p }: Scene,
  trackLength: number,
): BoughtPart[] {
  const chosen = chosenParts({ lead: p.lead }, choice.parts);
  const current = p.continuousCurrent / Math.SQRT2;
  const size = current <= SMALL_AMPLIFIER ? 'low' : current <= MEDIUM_AMPLIFIER ? 'medium' : 'high';
  const encoder = partEffort('encoder', chosen.encoder);
  const drive: BoughtPart[] =
    p.lead > 0
      ? [
          { label: 'Servomotor with encoder', effort: 'low', quantity: 1 },
          {
            label: `${PART_LABELS.screw}, nut and bearings`,
            effort: partEffort('screw', chosen.screw) ?? 'medium',
            quantity: 1,
          },
        ]
      : [
          { label: 'Coil unit', effort: 'medium', quantity: p.motorCount },
          { label: 'Magnet track, per metre', effort: 'medium', quantity: trackLength },
        ];
  const balance =
    p.counterbalance > 0 ? [{ label: 'Counterbalance', effort: 'low', quantity: 1 } as const] : [];
  const cooler = values.cooling ? [{ label: 'Chiller', effort: 'medium', quantity: 1 } as const] : [];
  return [
    ...drive,
    { label: PART_LABELS.guide, effort: partEffort('guide', chosen.guide) ?? 'low', quantity: 1 },
    ...(encoder === null ? [] : [{ label: PART_LABELS.encoder, effort: encoder, quantity: 1 }]),
    { label: `Amplifier, ${inUnit(p.continuousCurrent, 'A RMS', 2)}`, effort: size, quantity: 1 },
    ...balance,
    ...cooler,
  ];
}

/** Price of an effort, in the currency of the job. */
export function priceOf(effort: Effort, { priceLow, priceMedium, priceHigh }: JobValues): number {
  return { low: priceLow, medium: priceMedium, high: priceHigh }[effort];
}

/** '2 × Coil unit, medium effort'; what is bought by the metre with its length. */
export function partText({ label, effort, quantity }: BoughtPart): string {
  const count = Number.isInteger(quantity)
    ? quantity === 1
      ? ''
      : `${quantity} × `
    : `${ranged(quantity, 'm')} of `;
  const name = label.replace(', per metre', '');
  return `${count}${name.charAt(0).toLowerCase()}${name.slice(1)} (${effort})`;
}
