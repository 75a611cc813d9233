import { flexibleMass, loadSideMass, type ModeSide, motorSideMass } from './movedMass.ts';
import { FILTER_NUMBERS } from './parameters/filters.ts';
import { parameterNamed as named } from './parameters/labels.ts';
import { PARAMETERS, type ParameterName, type Parameters } from './parameters/table.ts';
import { type Problem, problem } from './problem.ts';
import { exactly, type Sentence, sentence } from './sentence.ts';

/** A condition between parameters. `broken` says what is wrong and how to fix it, or null. */
interface CrossRule {
  readonly fields: readonly [ParameterName, ...ParameterName[]];
  broken(p: Parameters): Sentence | null;
}

type NumberName = { [K in ParameterName]: Parameters[K] extends number ? K : never }[ParameterName];

/** Rate of the position loop, Hz. */
export function positionRate(p: Parameters): number {
  return p.currentRate / p.positionDivider;
}

/** Where the program turns round, m; a move list is checked line by line instead. */
function turningPoints(p: Parameters): readonly number[] {
  switch (p.program) {
    case 'shuttle':
    case 'scan':
      return [p.start + p.stroke];
    case 'staircase':
      return [p.start + p.stairCount * p.stairStep];
    case 'step':
      return [p.start + p.stepSize];
    case 'sine':
      return [p.start - p.sineAmplitude, p.start + p.sineAmplitude];
    default:
      return [];
  }
}

/** A sum of positions may pass a limit by a rounding, m. */
const ROUNDING = 1e-12;

export type Travel = Pick<Parameters, 'travelMin' | 'travelMax'>;

export function isInTravel(p: Travel, position: number): boolean {
  return position >= p.travelMin - ROUNDING && position <= p.travelMax + ROUNDING;
}

/** The travel as a range: '−300 mm to 300 mm'. */
export function travelRange(p: Travel): Sentence {
  return sentence`${exactly(p.travelMin, 'mm')} to ${exactly(p.travelMax, 'mm')}`;
}

function withValue(p: Parameters, name: NumberName): Sentence {
  return sentence`${named(name)} (${exactly(p[name], PARAMETERS[name].unit)})`;
}

function ordered(lower: NumberName, upper: NumberName, { orEqual = false } = {}): CrossRule {
  const than = orEqual ? 'at most' : 'less than';
  return {
    fields: [lower, upper],
    broken: (p) =>
      p[lower] < p[upper] || (orEqual && p[lower] === p[upper])
        ? null
        : sentence`${withValue(p, lower)} must be ${than} ${withValue(p, upper)}.
            Lower ${named(lower)} or raise ${named(upper)}.`,
  };
}

/** A sampled loop knows no frequency above half its rate (Shannon, Proc. IRE 37(1), 1949). */
function sampled(name: NumberName, usedBy: ParameterName, isUsed: (p: Parameters) => boolean): CrossRule {
  return {
    fields: [name, usedBy, 'positionDivider', 'currentRate'],
    broken: (p) =>
      !isUsed(p) || p[name] < positionRate(p) / 2
        ? null
        : sentence`${withValue(p, name)} must be below half the rate of the position loop,
            ${exactly(positionRate(p) / 2, 'Hz')}. Lower it, or lower ${named('positionDivider')}.`,
  };
}

/** Flexible parts are contained in the mass of their side, and this share of it must be left to carry them. */
const RIGID_SHARE = 0.1;

function flexible(
  side: ModeSide,
  massOf: (p: Parameters) => number,
  [ofSide, ...others]: readonly [ParameterName, ...ParameterName[]],
): CrossRule {
  return {
    fields: [
      ...(['mode1Mass', 'mode2Mass', 'mode3Mass'] as const),
      ...(['mode1', 'mode2', 'mode3'] as const),
      ...[ofSide, ...others],
    ],
    broken: (p) => {
      const [flexing, mass] = [flexibleMass(p, side), massOf(p)];
      return flexing <= (1 - RIGID_SHARE) * mass
        ? null
        : sentence`The flexible parts on the ${side} weigh ${exactly(flexing, 'kg')}. They are contained in its mass,
            ${exactly(mass, 'kg')}, and may be at most ${exactly(1 - RIGID_SHARE, '%')} of it.
            Lower ${named('mode1Mass')} or that of the other modes, or raise ${named(ofSide)}.`;
    },
  };
}

/** Whether both poles of a section lie inside the unit circle. Source: Jury's criterion for second order. */
function isStableSection(a1: number, a2: number): boolean {
  return Math.abs(a2) < 1 && Math.abs(a1) < 1 + a2;
}

export const CROSS_RULES: readonly CrossRule[] = [
  ordered('travelMin', 'travelMax'),
  {
    fields: ['start', 'travelMin', 'travelMax'],
    broken: (p) =>
      isInTravel(p, p.start)
        ? null
        : sentence`${withValue(p, 'start')} is outside the travel, ${travelRange(p)}.
            Move it inside or widen the travel.`,
  },
  {
    fields: [
      'stroke',
      'start',
      'program',
      'sineAmplitude',
      'stairStep',
      'stairCount',
      'stepSize',
      'travelMin',
      'travelMax',
    ],
    broken: (p) => {
      const outside = turningPoints(p).find((position) => !isInTravel(p, position));
      return outside === undefined
        ? null
        : sentence`The ${p.program} would reach ${exactly(outside, 'mm')}, outside the travel, ${travelRange(p)}.
            Make the motion smaller, move ${named('start')}, or widen the travel.`;
    },
  },
  ordered('sweepFrom', 'sweepTo'),
  sampled('sweepTo', 'program', (p) => p.program === 'chirp' || p.program === 'stepped sine'),
  ...FILTER_NUMBERS.flatMap((n): CrossRule[] => [
    sampled(`filter${n}Frequency`, `filter${n}`, (p) => !['off', 'coefficients'].includes(p[`filter${n}`])),
    {
      fields: [`filter${n}A1`, `filter${n}A2`, `filter${n}`],
      broken: (p) => {
        const [a1, a2] = [p[`filter${n}A1`], p[`filter${n}A2`]];
        return p[`filter${n}`] !== 'coefficients' || isStableSection(a1, a2)
          ? null
          : sentence`Filter ${String(n)} is unstable with ${withValue(p, `filter${n}A1`)} and
              ${withValue(p, `filter${n}A2`)}: its poles lie on or outside the unit circle. Make |a2| less than 1 and
              |a1| less than 1 + a2. Some drives state the a-terms with the other sign.`;
      },
    },
  ]),
  flexible('table', loadSideMass, ['tableMass', 'payload']),
  flexible('motor side', motorSideMass, ['coilMass', 'motorCount', 'rotorInertia', 'lead']),
  ordered('foldbackTemperature', 'windingLimit'),
  ordered('windingStart', 'windingLimit'),
  ordered('continuousCurrent', 'peakCurrent', { orEqual: true }),
  ordered('encoderResolution', 'signalPeriod', { orEqual: true }),
  {
    fields: ['processTime', 'processFrequency', 'process'],
    broken: (p) =>
      p.process !== 'pulse' || p.processTime * p.processFrequency <= 1
        ? null
        : sentence`${withValue(p, 'processTime')} is longer than the interval between pulses,
            ${exactly(1 / p.processFrequency, 'ms')}. Shorten it or lower ${named('processFrequency')}.`,
  },
];

/** What is wrong between the parameters of a set whose single values are all legal. */
export function crossChecks(p: Parameters): Problem[] {
  return CROSS_RULES.flatMap(({ fields: [field], broken }) => {
    const message = broken(p);
    return message === null ? [] : [problem(field, p[field], message)];
  });
}
