import type { Course } from '../../shared/protocol/timeLapse.ts';
import type { TemperatureData } from '../drawings/temperatures.ts';
import type { SimulatedCandidate } from './simulatedCandidate.ts';

/** The duty of a candidate with a coolant, or in room air. */
export function courseOf({ outcome: { heat } }: SimulatedCandidate, withCoolant: boolean): Course {
  return heat.asSet.cooling === withCoolant ? heat.asSet : heat.switched;
}

/** Temperatures of a candidate with or without a coolant, the other way beside them. */
export function temperatureData(candidate: SimulatedCandidate, withCoolant: boolean): TemperatureData {
  const { parameters: p } = candidate.scene;
  return {
    course: courseOf(candidate, withCoolant),
    other: courseOf(candidate, !withCoolant),
    foldback: p.foldbackTemperature,
    limit: p.windingLimit,
    hasScrew: p.lead > 0,
  };
}
