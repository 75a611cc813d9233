import { CHANNELS } from '../core/channels.ts';
import { ranged } from '../core/format.ts';
import type { Unit } from '../core/units.ts';
import { figureText } from '../figures/figure.ts';
import { LOOP_FIGURES, type LoopFigure } from '../figures/loopFigures.ts';
import { MOVE_FIGURES, moveFigureText } from '../figures/moveFigures.ts';
import type { Measure, MeasureSource } from './lesson.ts';

/** When the drive tripped, as a figure. */
const TRIP = {
  label: 'Trip of the drive',
  unit: 's',
  definition: 'Time of the trip.',
  absent: 'none',
} as const;

/** What a measure is called: 'Following error, RMS, with iron'. */
export function measureLabel({ source, of }: Measure): string {
  return [sourceLabel(source), of].filter(Boolean).join(', ');
}

/** A value of a measure (SI) as it is read, or why there is none. */
export function measureText({ source }: Measure, value: number | null): string {
  switch (source.kind) {
    case 'move':
      return moveFigureText(source.figure, value);
    case 'channel':
      return value === null ? '—' : ranged(value, CHANNELS[source.channel].unit);
    case 'loop':
      return figureText(LOOP_FIGURES[source.figure], value);
    case 'trip':
      return figureText(TRIP, value);
  }
}

/** The family of units of a measure. */
export function measureUnit({ source }: Measure): Unit {
  switch (source.kind) {
    case 'move':
      return MOVE_FIGURES[source.figure].unit;
    case 'channel':
      return CHANNELS[source.channel].unit;
    case 'loop':
      return LOOP_FIGURES[source.figure].unit;
    case 'trip':
      return TRIP.unit;
  }
}

/** A label without the symbol behind it, which means nothing to a class. */
function plainLabel(label: string): string {
  return label.replace(/ \w_\w$/, '');
}

/** What is measured, whoever’s it is. */
export function sourceLabel(source: MeasureSource): string {
  switch (source.kind) {
    case 'move':
      return MOVE_FIGURES[source.figure].label;
    case 'channel':
      return `${plainLabel(CHANNELS[source.channel].label)}, ${source.take}`;
    case 'loop': {
      const figure: LoopFigure = LOOP_FIGURES[source.figure];
      return figure.label;
    }
    case 'trip':
      return TRIP.label;
  }
}
