import type { Parameters } from '../core/parameters/table.ts';
import type { Sentence } from '../core/sentence.ts';
import type { Trip } from './axis.ts';

/** What a time-lapse is asked. SI, °C. */
export interface LapseOptions {
  readonly hours: number;
  /** Share by which resistance, flux or current limit may move before the cycle is run again. */
  readonly refreshFraction: number;
  /** From sample to sample of the result, s; samples stand at whole cycles of the program. */
  readonly sampleEvery: number;
  /** What cooling shall keep: the winding below this, °C, and the growth at the tool within plus or minus this, m. */
  readonly windingTarget: number;
  readonly growthTarget: number | null;
}

/** Eight hours, a winding that is not folded back, and a tool that stays in the window. */
export function lapseDefaults(p: Parameters): LapseOptions {
  return {
    hours: 8,
    refreshFraction: 0.02,
    sampleEvery: 60,
    windingTarget: p.foldbackTemperature,
    growthTarget: p.window,
  };
}

/** The axis as warm as it is at one moment of its duty: temperatures in °C at the start of a cycle, and what that cycle then is. */
export interface HeatState {
  readonly winding: number;
  readonly carrier: number;
  readonly table: number;
  readonly screw: number;
  /** Hottest winding of the cycle, °C. */
  readonly windingPeak: number;
  /** Force per ampere over that with everything as warm as the room. */
  readonly forcePerAmp: number;
  /** How far the tool stands from where it stood cold, m, at the end of the stroke where that is most. */
  readonly growth: number;
  /** Means over the cycle, W: taken from the amplifier, lost, and given by the carrier to air or coolant. */
  readonly electricPower: number;
  readonly copper: number;
  readonly iron: number;
  readonly guide: number;
  readonly nut: number;
  readonly sinkHeat: number;
}

export interface LapseSample extends HeatState {
  /** Since the start of the duty, s. */
  readonly time: number;
}

/** Hours of duty, with or without the coolant. It ends early when the drive trips. Times in s since the start of the duty. */
export interface Course {
  readonly cooling: boolean;
  readonly samples: readonly LapseSample[];
  readonly trip: Trip | null;
  /** When the winding first gets so hot that its current is folded back; null when it does not in these hours. */
  readonly hotTime: number | null;
  /** When the overload allowance of the amplifier is first used up. */
  readonly overloadTime: number | null;
  /** Where it settles in the long run; null without limit to it, when losses grow faster with temperature than heat flows off. */
  readonly steady: HeatState | null;
}

/** What the coolant has to do for one target. */
export interface CoolantNeed {
  /** To be carried away in the long run, W. */
  readonly heat: number;
  /** Carrier that gives off this heat and keeps the target, °C. */
  readonly carrier: number;
  /** Warmest coolant that takes it through the conductance that the carrier has, °C. */
  readonly temperature: number;
  /** Conductance that takes it at the coolant temperature of the scene, W/K at standstill; null when the carrier must be colder than that. */
  readonly conductance: number | null;
}

export interface CoolingTarget {
  readonly of: 'winding' | 'growth';
  /** °C or m. */
  readonly limit: number;
  /** In the long run in room air; null without limit. */
  readonly inAir: number | null;
  readonly metInAir: boolean;
  /** Null when none is needed, and when none at the carrier helps. */
  readonly coolant: CoolantNeed | null;
}

export interface CoolingVerdict {
  readonly targets: readonly CoolingTarget[];
  /** Some target asks for a coolant colder than the room, at the conductance that the carrier has. */
  readonly chillerNeeded: boolean;
  /** Heat that the coolant has to take so that all targets that can be met are, W; 0 where none is needed. */
  readonly heat: number;
  /** Targets that no coolant at the carrier meets. */
  readonly outOfReach: readonly CoolingTarget['of'][];
}

/** Whether the axis can do its duty for the hours given, and continuously. */
export interface DutyVerdict {
  readonly canDo: boolean;
  /** Why not. */
  readonly reasons: readonly Sentence[];
  /** Of all motors together, N, and amplitude of the amplifier, A: root mean squares at the end of the hours. */
  readonly rmsForce: number;
  readonly continuousForce: number;
  readonly rmsCurrent: number;
  readonly continuousCurrent: number;
}

export interface TimeLapse {
  readonly title: string;
  readonly hours: number;
  /** Of the cycle that was run again and again, s. */
  readonly cycleTime: number;
  /** How often it was run to be measured. */
  readonly measurements: number;
  readonly asSet: Course;
  /** The same with the coolant switched the other way. */
  readonly switched: Course;
  readonly duty: DutyVerdict;
  /** Null when the cycle cannot even be run cold. */
  readonly cooling: CoolingVerdict | null;
}
