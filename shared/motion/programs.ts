import type { moveRows } from '../core/parameters/motion.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { Planner } from './planner.ts';
import type { Segment } from './segment.ts';

/** What a program is made of, besides its move list. SI. */
export type ProgramParameters = Pick<Parameters, keyof typeof moveRows>;

/** One kind of program: the segments of a cycle, which is repeated over and over. */
export interface ProgramCycle {
  /** The cycle begins at the parameter `start`, and the axis is first moved there. */
  readonly fromStart: boolean;
  /** Number of segments. */
  length(p: ProgramParameters, plan: Planner): number;
  /** Plans segment `index`. A dwell keeps its index whatever the parameters, so that it can be planned again. */
  segment(index: number, p: ProgramParameters, plan: Planner): Segment;
}

/** Periods of the stepped sine at each frequency at least; the first ones let the axis settle. */
const MIN_PERIODS = 4;

/** Four segments: go, dwell, return, dwell. */
function thereAndBack(
  go: (p: ProgramParameters, plan: Planner) => Segment,
  comeBack: (p: ProgramParameters, plan: Planner) => Segment,
): ProgramCycle {
  return {
    fromStart: true,
    length: () => 4,
    segment: (index, p, plan) =>
      index === 0 ? go(p, plan) : index === 2 ? comeBack(p, plan) : plan.dwell(p.dwell),
  };
}

/** Two segments: a dwell in which the axis settles, then the injection. */
function injection(inject: (p: ProgramParameters, plan: Planner) => Segment): ProgramCycle {
  return {
    fromStart: true,
    length: () => 2,
    segment: (index, p, plan) => (index === 0 ? plan.dwell(p.dwell) : inject(p, plan)),
  };
}

/**
 * What each program of the parameter table does: its one description. The simulation walks through it, and all that is
 * said of a cycle before it is run is read from it (cycle.ts).
 */
export const PROGRAMS: Readonly<Record<Parameters['program'], ProgramCycle>> = {
  hold: {
    fromStart: true,
    length: () => 1,
    segment: (_index, p, plan) => plan.dwell(p.start === plan.home ? Infinity : 0),
  },

  shuttle: thereAndBack(
    (p, plan) => plan.moveTo(plan.home + p.stroke, p),
    (p, plan) => plan.moveTo(plan.home, p),
  ),

  scan: thereAndBack(
    (p, plan) => plan.moveTo(plan.home + p.stroke, p, p.scanSpeed),
    (p, plan) => plan.moveTo(plan.home, p),
  ),

  step: thereAndBack(
    (p, plan) => plan.stepTo(plan.home + p.stepSize),
    (_p, plan) => plan.stepTo(plan.home),
  ),

  /** One period per cycle; an axis that is wanted elsewhere or otherwise swings out first. */
  sine: {
    fromStart: true,
    length: () => 1,
    segment: (_index, p, plan) => {
      const stays = p.program === 'sine' && p.start === plan.home;
      return plan.sinePeriod(p.sineFrequency, stays ? p.sineAmplitude : 0);
    },
  },

  staircase: {
    fromStart: true,
    length: (p) => 4 * p.stairCount,
    segment: (index, p, plan) => {
      if (index % 2 === 1) return plan.dwell(p.dwell);
      const stairs = index / 2 + 1;
      const level = Math.min(stairs, 2 * p.stairCount - stairs);
      return plan.moveTo(plan.home + level * p.stairStep, p);
    },
  },

  'force pulse': injection((p, plan) => plan.pulse(p.pulseForce, p.pulseTime)),

  chirp: injection((p, plan) => plan.sweep(p.sweepForce, p.sweepFrom, p.sweepTo, p.sweepTime)),

  /** Frequencies evenly spaced on a logarithmic scale share the sweep time evenly, in whole periods. */
  'stepped sine': {
    fromStart: true,
    length: (p) => 1 + p.sweepPoints,
    segment: (index, p, plan) => {
      if (index === 0) return plan.dwell(p.dwell);
      const last = p.sweepPoints - 1;
      const frequency = p.sweepFrom * (p.sweepTo / p.sweepFrom) ** ((index - 1) / last);
      const periods = Math.max(MIN_PERIODS, Math.round((frequency * p.sweepTime) / p.sweepPoints));
      return plan.tone(p.sweepForce, frequency, periods, index - 1 < last);
    },
  },

  /** Each line moves and dwells; without any line the axis stays where it is. */
  list: {
    fromStart: false,
    length: (_p, plan) => Math.max(1, 2 * plan.moves.length),
    segment: (index, _p, plan) => {
      const line = plan.moves[index >> 1];
      if (line === undefined) return plan.dwell(Infinity);
      return index % 2 === 0 ? plan.moveTo(line.to, line, line.speed, line.force) : plan.dwell(line.dwell);
    },
  },
};
