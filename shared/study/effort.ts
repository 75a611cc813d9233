import { brakeForce } from '../axis/gravity.ts';
import { guideLoad } from '../axis/guide.ts';
import { inUnit } from '../core/format.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { Scene } from '../core/scene.ts';
import type { CandidateChoice } from './candidate.ts';
import type { Job, JobValues } from './job.ts';
import { chosenParts, type Effort, type GuideId, PART_LABELS, partEffort } from './parts.ts';

/** A part that is bought, by the effort that it takes. */
export interface BoughtPart {
  readonly label: string;
  readonly effort: Effort;
  /** Pieces, or metres of what is bought by the metre. */
  readonly quantity: number;
  readonly unit: '' | 'm';
  /** Bought anew when the balls of its nut have reached their life. */
  readonly wears: boolean;
}

/** Amplifiers up to these continuous currents take little or a medium effort, A RMS. Common practice, no source. */
const SMALL_AMPLIFIER = 4;
const MEDIUM_AMPLIFIER = 12;

/**
 * Loads that four carriages carry at a tenth of their rating, N: of miniature guides, and of those of size 20. A set of four air pads carries
 * 1.5 kN: of 50 mm, at 0.2 N/mm². Common practice, no source.
 */
const SMALL_GUIDE = 1200;
const MEDIUM_GUIDE = 6000;
const PADS = 1500;

/**
 * What a candidate consists of besides what is the same for all (bed, table, control). Efforts of common practice, no source: a servomotor is
 * bought everywhere; coil units and magnet tracks are not. The attraction of an iron core has to be carried by the guide. A screw that is not
 * straight would push a table off its air film, so its nut is coupled along the axis only.
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
  const drive =
    p.lead > 0
      ? [
          part('Servomotor with encoder', 'low'),
          part(`${PART_LABELS.screw}, nut and bearings`, partEffort('screw', chosen.screw), { wears: true }),
          part('Second fixed bearing of the screw', partEffort('support', chosen.support)),
        ]
      : [
          part('Coil unit', 'medium', { quantity: p.motorCount }),
          part('Magnet track', 'medium', { quantity: trackLength, unit: 'm' }),
        ];
  return [
    ...drive,
    guide(chosen.guide, guideLoad(p)),
    part('Nut coupling, stiff along the axis only', p.lead > 0 && chosen.guide === 'air' ? 'medium' : null),
    part(PART_LABELS.encoder, partEffort('encoder', chosen.encoder)),
    part(`Amplifier, ${inUnit(p.continuousCurrent, 'A RMS', 2)}`, size),
    brake(p),
    part('Counterbalance', p.counterbalance > 0 ? 'low' : null),
    part('Chiller', values.cooling ? 'medium' : null),
  ].filter((each) => each !== null);
}

/** Below this an axis counts as balanced, and a guide as one that carries no weight, N. */
const NOTHING = 1;

/** What holds a load that would drop: built into a servomotor, or a clamp on the rail. Efforts of common practice, no source. */
function brake(p: Parameters): BoughtPart | null {
  const force = brakeForce(p);
  if (force < NOTHING) return null;
  return part(`Brake for ${inUnit(force, 'N', 2)}`, p.lead > 0 ? 'low' : 'medium');
}

/** A guide as large as its load asks for, N: the weight, and the attraction of the magnets with it. */
function guide(id: GuideId, load: number): BoughtPart | null {
  const label = load < NOTHING ? PART_LABELS.guide : `${PART_LABELS.guide} for ${inUnit(load, 'N', 2)}`;
  if (id === 'air') return part(label, 'high', { quantity: Math.max(1, Math.ceil(load / PADS)) });
  const least = partEffort('guide', id);
  const asked = load <= SMALL_GUIDE ? 'low' : load <= MEDIUM_GUIDE ? 'medium' : 'high';
  return part(label, least === 'medium' && asked === 'low' ? least : asked);
}

/** One of a part, unless stated otherwise; null where nothing is bought. */
function part(
  label: string,
  effort: Effort | null,
  others: Partial<Pick<BoughtPart, 'quantity' | 'unit' | 'wears'>> = {},
): BoughtPart | null {
  return effort && { label, effort, quantity: 1, unit: '', wears: false, ...others };
}

/** Price of these parts together, in the currency of the job. */
export function priceOfAll(
  parts: readonly BoughtPart[],
  { priceLow, priceMedium, priceHigh }: JobValues,
): number {
  const prices = { low: priceLow, medium: priceMedium, high: priceHigh };
  return parts.reduce((sum, { effort, quantity }) => sum + quantity * prices[effort], 0);
}
