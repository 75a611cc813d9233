import {
  AS_WRITTEN,
  approx,
  exactly,
  onPage,
  type Sentence,
  sentence,
  sentenceText,
} from '../core/sentence.ts';
import { type UnitSystem, unitSystem } from '../core/unitSystem.ts';
import type { Unit } from '../core/units.ts';
import type { Notice, Trip } from '../protocol/axis.ts';

/** Why the drive stopped itself, in a sentence or two: in the units of a person, or in SI for the command line. */
export function tripText(trip: Trip, units: UnitSystem | 'SI' = unitSystem()): string {
  return sentenceText(tripSentence(trip), units === 'SI' ? AS_WRITTEN : onPage(units));
}

export function tripSentence(trip: Trip): Sentence {
  switch (trip.kind) {
    case 'following error':
      if (trip.pulled)
        return sentence`The following error passed ${limit(trip, 'mm')} while the table was pulled by hand.`;
      return sentence`The following error passed ${limit(trip, 'mm')}. The loop is unstable or too soft,
        or the move needs more than the current limit allows.`;
    case 'over-travel':
      return sentence`The table passed the ${trip.side} travel limit at ${limit(trip, 'mm')}.`;
    case 'over-speed':
      return sentence`The table exceeded the speed limit of ${limit(trip, 'm/s')}.`;
    case 'over-temperature':
      return sentence`The winding reached its limit of ${limit(trip, '°C')}.
        Use a gentler cycle, a longer dwell or cooling.`;
    case 'oscillation':
      return sentence`The drive oscillated at about ${approx(trip.frequency, 'Hz')} between the limits of current or voltage:
        the loop is unstable.`;
    case 'divergence':
      return trip.undriven
        ? [
            'The motion grew without bound although the drive is off: values of the machine do not go together. Undo the last change, then reset.',
          ]
        : ['The motion grew without bound: the loop is unstable. Lower the gains, then reset.'];
  }
}

/** A limit is a number that somebody set. */
const LIMIT_DIGITS = 4;

function limit(trip: { readonly limit: number }, unit: Unit) {
  return exactly(trip.limit, unit, LIMIT_DIGITS);
}

/** What a drive would show as a warning, and what the simulation says of itself. */
export const NOTICE_TEXTS: Readonly<Record<Notice, string>> = {
  current: 'The current limit is reached: the motor gives less force than the loop demands.',
  voltage: 'The bus voltage is used up: the current cannot follow at this speed and acceleration.',
  overload: 'The overload time is used up: current is folded back to its continuous value.',
  heat: 'The winding is hot: current is folded back to protect it.',
  audit: 'The energy account of this run does not balance: its figures are not to be trusted.',
};
