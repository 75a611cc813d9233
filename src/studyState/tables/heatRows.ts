import { HEAT_FIGURE_NAMES, HEAT_FIGURES, type HeatFigure } from '../../../shared/figures/heatFigures.ts';
import { durationText } from '../../../shared/figures/timeLapseText.ts';
import { tripText } from '../../../shared/figures/tripText.ts';
import type { Course, HeatState } from '../../../shared/protocol/timeLapse.ts';
import type { JobValues } from '../../../shared/study/job.ts';
import { figureRow } from './figureRow.ts';
import type { Cell, TableRow } from './table.ts';

/** An axis at one moment of its duty. */
interface HeatColumn {
  /** Null where it does not come to that moment; `absent` says why. */
  readonly state: HeatState | null;
  readonly absent: string;
  readonly hasScrew: boolean;
}

/** The figures of heat. What is nothing in every column is left out: iron of motors without any, a screw where there is none. */
export function heatRows(
  prefix: string,
  columns: readonly HeatColumn[],
  { growthLimit }: JobValues,
): TableRow[] {
  return HEAT_FIGURE_NAMES.flatMap((name) => {
    const figure: HeatFigure = HEAT_FIGURES[name];
    const has = ({ hasScrew }: HeatColumn) => hasScrew || !figure.ofScrew;
    const values = columns.map((column) =>
      has(column) && column.state ? heatValue(figure, column.state) : null,
    );
    const isNothing = columns.every((column, k) => !has(column) || (column.state && values[k] === null));
    if (isNothing) return [];
    const fails =
      name === 'growth' && growthLimit > 0 ? (value: number) => Math.abs(value) > growthLimit : undefined;
    const row = figureRow(`heat-${prefix}-${name}`, figure, values, fails);
    const cells = row.cells.map((cell, k): Cell => {
      const column = columns[k];
      return column && column.state === null && has(column) ? { text: column.absent } : cell;
    });
    return { ...row, cells };
  });
}

/** A loss of nothing at all is none: the motor has no iron. */
function heatValue({ unit, of }: HeatFigure, state: HeatState): number | null {
  const value = of(state);
  return unit === 'W' && value === 0 ? null : value;
}

/** When something gives out in the hours of the duty. */
export function eventRows(courses: readonly Course[]): TableRow[] {
  const when = (time: number | null, why = ''): Cell =>
    time === null ? { text: 'never' } : { text: `after ${durationText(time)}${why}`, marks: ['fails'] };
  return [
    {
      id: 'heat-hot',
      label: 'Current folded back because of a hot winding',
      definition:
        'When the winding first becomes so hot that the drive folds back its current. From then on the axis cannot do the full duty.',
      cells: courses.map(({ hotTime }) => when(hotTime)),
    },
    {
      id: 'heat-overload',
      label: 'Overload allowance used up',
      definition: 'When the amplifier has first used up its overload allowance and folds back its current.',
      cells: courses.map(({ overloadTime }) => when(overloadTime)),
    },
    {
      id: 'heat-trip',
      label: 'Drive trips',
      definition: 'A trip ends the day: the winding at its limit, or any other trip of the drive.',
      cells: courses.map(({ trip }) => when(trip?.time ?? null, trip ? `: ${tripText(trip)}` : '')),
    },
  ];
}
