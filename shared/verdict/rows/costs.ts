import { sizingValue } from '../../sizing/sizing.ts';
import { type BoughtPart, boughtParts, priceOfAll } from '../../study/effort.ts';
import type { Job } from '../../study/job.ts';
import type { JudgedCandidate } from '../judgement.ts';
import { dayPower } from '../read.ts';

/** Greasing, checking and cleaning what rolls, a year: this share of a low effort for each rolling guide and nut. Common practice, no source. */
const CARE = 0.2;

/** What a candidate costs over the years that the job counts, in its currency. */
interface Costs {
  readonly parts: readonly BoughtPart[];
  /** Once: the parts, or the price that somebody gave. */
  readonly purchase: number;
  /** J drawn from the mains in a year. Null where the drive does not last the day. */
  readonly yearEnergy: number | null;
  /** A year of energy, and of care with the nuts that wear out. */
  readonly energy: number | null;
  readonly upkeep: number;
  readonly total: number | null;
}

export function costsOf(candidate: JudgedCandidate, job: Job): Costs {
  const { values } = job;
  const parts = boughtParts(
    job,
    candidate.choice,
    candidate.scene,
    sizingValue(candidate.sizing, 'trackLength') ?? 0,
  );
  const purchase = candidate.choice.price ?? priceOfAll(parts, values);
  const power = mainsPower(candidate, job);
  const yearEnergy = power === null ? null : power * values.dailyTime * values.days;
  const energy = yearEnergy === null ? null : yearEnergy * values.energyPrice;
  const upkeep = upkeepOf(candidate, job, parts);
  const total = energy === null ? null : purchase + values.years * (energy + upkeep);
  return { parts, purchase, yearEnergy, energy, upkeep, total };
}

/** Mean of the day from the mains, W: what the axis turns to heat and work, and what a braking resistor burns. */
export function mainsPower(candidate: JudgedCandidate, { values }: Job): number | null {
  const power = dayPower(candidate);
  if (power === null) return null;
  const burnt = values.regeneration ? 0 : (sizingValue(candidate.sizing, 'brakeResistor') ?? 0);
  return power + burnt;
}

/** Of a year: care for what rolls, and nuts bought anew within the years counted, spread over them. */
function upkeepOf(candidate: JudgedCandidate, { values }: Job, parts: readonly BoughtPart[]): number {
  const { parameters: p } = candidate.scene;
  const rolling = Number(p.frictionCoefficient > 0) + Number(p.lead > 0);
  const life = sizingValue(candidate.sizing, 'nutLife');
  const worn = life === null ? 0 : Math.floor((values.years * values.days * values.dailyTime) / life);
  const renewed = priceOfAll(
    parts.filter(({ wears }) => wears),
    values,
  );
  return CARE * rolling * values.priceLow + (worn * renewed) / values.years;
}
