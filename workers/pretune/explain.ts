import { feedbackWeights } from '../../shared/axis/loop/feedback.ts';
import { inUnit, ranged } from '../../shared/core/format.ts';
import {
  PARAMETERS,
  type ParameterChanges,
  type ParameterName,
  type Parameters,
} from '../../shared/core/parameters/table.ts';
import type { TuningChoice } from '../../shared/protocol/pretune.ts';
import { limitText } from './goal.ts';
import { DISTANCE_KEPT, NOISE_SHARE } from './loopDesign.ts';
import { type MotionForce, speedLag } from './motion.ts';
import { CURRENT_PERIODS } from './rules/magnitudeOptimum.ts';
import type { Structure } from './structure.ts';
import type { Tried } from './tried.ts';

/**
 * Every chosen value, why, and by which rule, one sentence each.
 *
 * @param p the parameters that the tuning was designed on
 */
export function explain(p: Parameters, tried: Tried): TuningChoice[] {
  const { changes } = tried.point;
  return [
    ...currentLoop(p, changes),
    ...positionLoop(p, tried),
    ...forces(tried),
    ...observer(tried),
    ...filters(tried),
  ].flatMap(([parameter, rule, sentence]) => {
    const value = changes[parameter];
    return value === undefined ? [] : [{ parameter, value, sentence, rule }];
  });
}

type Line = readonly [parameter: ParameterName, rule: string, sentence: string];

function currentLoop(p: Parameters, changes: ParameterChanges): Line[] {
  return [
    [
      'currentBandwidth',
      'magnitude optimum',
      `${shown('currentBandwidth', changes)}: with the winding pole cancelled, the current loop is an integrator behind a delay of ${CURRENT_PERIODS} periods, ${ranged(CURRENT_PERIODS / p.currentRate, 's')}, and this is the highest bandwidth at which its response stays flat.`,
    ],
  ];
}

/** The gains that place crossover, lead corner and integrator corner of a structure, and what the lead's says of itself. */
const PLACES = {
  PID: { crossover: 'Kd', lead: 'Kp', integrator: 'Ki' },
  cascade: { crossover: 'velocityGain', lead: 'positionLoopGain', integrator: 'resetTime' },
} as const;

function positionLoop(
  p: Parameters,
  { atLimit: { limit }, structure: { quiet }, shape, point: { changes, crossover } }: Tried,
): Line[] {
  const { error, errorIntegral, speed, speedIntegral } = feedbackWeights({ ...p, ...changes });
  const integral = errorIntegral > 0;
  // The corners of lead and integrator add up to a/c, or Kp/Kd; their ratio is that of the shape.
  const corners = (error + speedIntegral) / speed;
  const lead = corners / (integral ? 1 + shape.integratorCorner / shape.leadCorner : 1) / (2 * Math.PI);
  const integrator = (lead * shape.integratorCorner) / shape.leadCorner;
  const lag = speedLag({ ...p, ...changes });
  const place = PLACES[p.controller];
  return [
    [
      place.crossover,
      'loop shaping',
      `${shown(place.crossover, changes)} puts the crossover at ${ranged(crossover ?? Number.NaN, 'Hz')}, as high as these allow: ${limitText(limit)} standing and sliding, at least ${inUnit(DISTANCE_KEPT, '%', 2)} of that distance from instability where mass or resonance differs from the datasheet, and encoder noise of no more than ${inUnit(NOISE_SHARE, '%', 1)} of the continuous current.`,
    ],
    [
      place.lead,
      'loop shaping',
      `${shown(place.lead, changes)} puts the lead corner at ${ranged(lead, 'Hz')}: a lower corner leaves more phase, a higher one more stiffness; simulated runs decided between them.`,
    ],
    !integral
      ? [
          place.integrator,
          'loop shaping',
          'Off: the observer takes up what an integrator would, and a second integral would cost phase.',
        ]
      : quiet
        ? [
            place.integrator,
            'loop shaping for low noise',
            `${shown(place.integrator, changes)} puts the integrator corner at ${ranged(integrator, 'Hz')}: a low corner passes on less encoder noise, and the simulated runs followed best with this one.`,
          ]
        : [
            place.integrator,
            'largest integral gain within the limit',
            `${shown(place.integrator, changes)} puts the integrator corner at ${ranged(integrator, 'Hz')}: the largest integral gain removes a disturbance fastest; simulated runs chose this value near it.`,
          ],
    quiet
      ? [
          'derivativeTime',
          'loop shaping for low noise',
          `${shown('derivativeTime', changes)}: long enough to keep encoder noise out of the force; the simulated runs followed best with it.`,
        ]
      : [
          'derivativeTime',
          'loop shaping',
          `${shown('derivativeTime', changes)}: this and half a sample delay the measured speed by ${ranged(lag, 's')}, and all delay costs phase at the crossover.`,
        ],
  ];
}

function observer({ point: { changes } }: Tried): Line[] {
  return [
    [
      'observerBandwidth',
      'largest integral action within the limit',
      `${shown('observerBandwidth', changes)}: the observer takes up loads below this frequency, and every hertz of it costs phase at the crossover.`,
    ],
    [
      'observerMass',
      'force balance',
      `${shown('observerMass', changes)}: the moved mass according to the datasheet; force that neither it nor the feedforward explains counts as load.`,
    ],
  ];
}

function forces({ point: { changes }, motion }: Tried): Line[] {
  const source = motion.source === 'run' ? 'a least-squares fit over a simulated run' : 'the datasheet';
  return [
    [
      'setSpeedDelay',
      'force balance',
      `${shown('setSpeedDelay', changes)}, as much as the measured speed lags: in a move the two then agree, and the feedback has nothing to correct, however high its gain.`,
    ],
    [
      'velocityFeedforward',
      'force balance',
      `${shown('velocityFeedforward', changes)}: the velocity loop is commanded the full speed of the profile, so the position loop corrects only what is left.`,
    ],
    [
      'accelerationFeedforward',
      'force balance',
      `${shown('accelerationFeedforward', changes)}: ${massText(motion, source)}.`,
    ],
    [
      'speedFeedforward',
      'force balance',
      `${shown('speedFeedforward', changes)}: the drag in proportion to speed, from ${source}.`,
    ],
    [
      'forceBias',
      'force balance',
      changes.forceBias === 0
        ? '0 N: gravity does not act along the axis, or the counterbalance carries all of it.'
        : `${shown('forceBias', changes)}: the weight, less what the counterbalance carries.`,
    ],
  ];
}

function massText({ mass, trim }: MotionForce, source: string): string {
  if (trim === 0) return `the moved mass, from ${source}`;
  const change = `${inUnit(Math.abs(trim), '%', 1)} ${trim < 0 ? 'less' : 'more'}`;
  return `the moved mass is ${ranged(mass, 'kg')} from ${source}, and with ${change} the table settled fastest in the simulated runs`;
}

function filters(tried: Tried): Line[] {
  return [...NOTCHES.flatMap((names, k) => notch(tried, names, k)), ...lowpass(tried)];
}

function notch(tried: Tried, names: (typeof NOTCHES)[number], k: number): Line[] {
  const { changes } = tried.point;
  const chosen = tried.shape.notches[k];
  const resonance = tried.structure.notches[k];
  if (chosen === undefined || resonance === undefined) {
    const name = k === 0 ? 'a notch' : 'a second notch';
    return [[names.type, 'loop shaping', without(tried, ({ notches }) => notches.length > k, name)]];
  }
  return [
    [
      names.type,
      'loop shaping',
      `Notch: the resonance at ${ranged(resonance.frequency, 'Hz')}, ${SWINGS[resonance.table]}, would otherwise hold the crossover down.`,
    ],
    [
      names.frequency,
      'loop shaping',
      `${shown(names.frequency, changes)}, ${inUnit(chosen.frequency / resonance.frequency, '', 3)} of the resonance: found by a search for the largest integral gain that also holds with the resonance 15 % off.`,
    ],
    [
      names.width,
      'loop shaping',
      `${shown(names.width, changes)}: wide enough for a resonance that is 15 % off, and no wider, since width costs phase below.`,
    ],
    [
      names.depth,
      'loop shaping',
      `${shown(names.depth, changes)}: deep enough for the peak, and no deeper, since depth costs phase below.`,
    ],
  ];
}

function lowpass(tried: Tried): Line[] {
  const { changes } = tried.point;
  if (tried.shape.lowpass === null)
    return [['filter3', 'loop shaping', without(tried, (structure) => structure.lowpass, 'a low-pass')]];
  return [
    [
      'filter3',
      'loop shaping',
      'Low-pass: it lowers the loop above its crossover more than it costs phase at it.',
    ],
    [
      'filter3Frequency',
      'loop shaping',
      `${shown('filter3Frequency', changes)}: found by a search for the largest integral gain within the limit.`,
    ],
    [
      'filter3Damping',
      'loop shaping',
      `${shown('filter3Damping', changes)}: found by the same search as its frequency.`,
    ],
  ];
}

const SWINGS = {
  sliding: 'where motor and table swing against each other',
  standing: 'where the standing table swings on its guide',
};

const NOTCHES = [
  { type: 'filter1', frequency: 'filter1Frequency', width: 'filter1Damping', depth: 'filter1Depth' },
  { type: 'filter2', frequency: 'filter2Frequency', width: 'filter2Damping', depth: 'filter2Depth' },
] as const;

/** Why a filter stays off: the result within the same limit with it and without any. */
function without(
  { atLimit: { designs } }: Tried,
  has: (structure: Structure) => boolean,
  name: string,
): string {
  const gain = (k: number) => designs[k]?.design?.rejection ?? 0;
  const withIt = designs.findIndex(({ structure }) => has(structure));
  if (withIt < 0) return `Off: no resonance stands out that ${name} could remove.`;
  if (gain(withIt) === 0) return `Off: no loop with ${name} keeps the limit.`;
  const change = gain(withIt) / gain(0) - 1;
  return change < 0
    ? `Off: with ${name} the largest integral gain within the limit is ${inUnit(-change, '%', 2)} lower than without.`
    : `Off: ${name} allows a larger integral gain, but in the simulated runs the axis did better without it.`;
}

function shown(name: ParameterName, changes: ParameterChanges): string {
  const row = PARAMETERS[name];
  const value = changes[name];
  return row.kind === 'number' && typeof value === 'number' ? ranged(value, row.unit) : String(value);
}
