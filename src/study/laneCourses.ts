import type { Course } from '../../shared/timeLapse.ts';
import type { TemperatureData } from '../drawing/charts/temperatures.ts';
import type { SimulatedLane } from './simulatedLane.ts';

/** The duty of a lane with a coolant, or in the air of the room. */
export function courseOf({ outcome: { heat } }: SimulatedLane, withCoolant: boolean): Course {
  return heat.asSet.cooling === withCoolant ? heat.asSet : heat.switched;
}

/** Temperatures of a lane with or without a coolant, the other way beside them. */
export function temperatureData(lane: SimulatedLane, withCoolant: boolean): TemperatureData {
  const { parameters: p } = lane.scene;
  return {
    course: courseOf(lane, withCoolant),
    other: courseOf(lane, !withCoolant),
    foldback: p.foldbackTemperature,
    limit: p.windingLimit,
    hasScrew: p.lead > 0,
  };
}
