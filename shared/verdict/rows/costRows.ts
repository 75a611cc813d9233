import { ranged, shortest } from '../../core/format.ts';
import { unitSystem } from '../../core/unitSystem.ts';
import { unitIn } from '../../core/units.ts';
import type { BoughtPart } from '../../study/effort.ts';
import { yearsText } from '../../study/jobLabels.ts';
import { lowered } from '../text.ts';
import { costsOf } from './costs.ts';
import { figureRow } from './row.ts';
import { YEAR_FIGURES } from './yearFigures.ts';

/** Whole units of the currency: nobody compares cents. */
const money = (value: number | null) =>
  value === null ? 'does not last the day' : Math.round(value).toString();

/** '2 × coil unit (medium)'; what is bought by the metre with its length: '0.57 m of magnet track (medium per 1 m)'. */
function partText({ label, effort, quantity, unit }: BoughtPart): string {
  const count = unit === 'm' ? `${ranged(quantity, 'm')} of ` : quantity === 1 ? '' : `${quantity} × `;
  const each = unit === 'm' ? ` per ${shortest(1, unitIn(unitSystem(), 'm'), 4)}` : '';
  return `${count}${lowered(label)} (${effort}${each})`;
}

export const COST_ROWS = [
  figureRow({
    id: 'total',
    group: 'cost',
    label: 'Total cost over the years counted',
    name: 'total cost',
    unit: '',
    better: 'less',
    definition:
      'Purchase, and energy and upkeep of the years that the job counts, in your currency. Bed, table, control and assembly are the same for all and left out.',
    of: (candidate, job) => costsOf(candidate, job).total,
    text: money,
    resolution: { absolute: 1, relative: 0.005 },
    speech: {
      weight: 0.9,
      family: 'cost',
      verb: 'has',
      noun: 'a total cost',
      measure: 'height',
      mattersFrom: ({ values }) => 10 * values.savingThatCounts,
    },
    cause: (candidate, job, rival) => {
      const own = costsOf(candidate, job);
      if (rival === null)
        return candidate.choice.price === undefined ? own.parts.map(partText).join(', ') : 'your own price';
      const other = costsOf(rival, job);
      const { years } = job.values;
      const differences = [
        { text: 'purchase', by: own.purchase - other.purchase },
        { text: `${yearsText(years)} of energy`, by: years * ((own.energy ?? 0) - (other.energy ?? 0)) },
        { text: `${yearsText(years)} of upkeep`, by: years * (own.upkeep - other.upkeep) },
      ];
      const sign = Math.sign((own.total ?? 0) - (other.total ?? 0));
      const largest = differences.reduce((max, each) => (sign * each.by > sign * max.by ? each : max));
      return sign === 0
        ? null
        : `${largest.text} ${shortest(Math.round(Math.abs(largest.by)), '')} ${sign > 0 ? 'more' : 'less'}`;
    },
  }),
  figureRow({
    id: 'purchase',
    group: 'cost',
    label: 'Purchase',
    unit: '',
    better: 'less',
    definition:
      'Drive, guide, encoder, amplifier: the efforts of the parts at the prices of the job, or the price given for the candidate.',
    of: (candidate, job) => costsOf(candidate, job).purchase,
    text: money,
    resolution: { absolute: 1, relative: 0.005 },
  }),
  figureRow({
    ...YEAR_FIGURES.energy,
    id: 'yearEnergy',
    group: 'cost',
    better: 'less',
    resolution: { absolute: 3.6e5, relative: 0.02 },
  }),
  figureRow({
    ...YEAR_FIGURES.cost,
    id: 'cost',
    group: 'cost',
    better: 'less',
    resolution: { absolute: 0.01, relative: 0.02 },
  }),
  figureRow({
    id: 'upkeep',
    group: 'cost',
    label: 'Upkeep per year',
    unit: '',
    better: 'less',
    definition:
      'Greasing and inspection of rolling parts, a fifth of a low effort for each guide and nut, and new nuts where their life is shorter than the years counted.',
    of: (candidate, job) => costsOf(candidate, job).upkeep,
    text: money,
    resolution: { absolute: 1, relative: 0.02 },
  }),
];
