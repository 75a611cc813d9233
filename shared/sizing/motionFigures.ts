import { inUnit, ranged } from '../core/format.ts';
import { loadSideMass, motorSideMass, translatingMotorMass } from '../core/movedMass.ts';
import type { MotionStretch } from '../motion/cycleMotion.ts';
import type { Setpoint } from '../motion/setpoint.ts';
import { totalTime } from './duty.ts';
import type { CandidateFacts } from './facts.ts';
import { beyondText, type Figured, limited, plain } from './figure.ts';
import { referredInertia } from './shaft.ts';

/** What the job asks the axis to do, and what has to be moved for it. */
export function motionFigures(facts: CandidateFacts): Figured[] {
  return [speed(facts), acceleration(facts), duration(facts), mass(facts), match(facts)];
}

interface Extreme {
  readonly point: Setpoint;
  readonly move: number;
}

/** The point of the cycle where a quantity is largest. */
function extreme(motion: readonly MotionStretch[], of: (point: Setpoint) => number): Extreme {
  const points = motion.flatMap(({ points, move }) => points.map((point) => ({ point, move })));
  return points.reduce((best, each) => (of(each.point) > of(best.point) ? each : best));
}

export function peakSpeed(motion: readonly MotionStretch[]): Extreme {
  return extreme(motion, ({ speed }) => Math.abs(speed));
}

function speed({ job, p, motion }: CandidateFacts): Figured {
  const { point, move } = peakSpeed(motion);
  const value = Math.abs(point.speed);
  const { stroke, moveTime } = job.values;
  const calculation =
    p.program === 'list'
      ? {
          formula: 'v_pk = max |v(t)| over all moves of the list',
          numbers: `move ${move + 1}: ${ranged(value, 'm/s')}`,
        }
      : {
          formula: 'v_pk = 1.5 s/t_m',
          numbers: `1.5 · ${ranged(stroke, 'm')}/${ranged(moveTime, 's')} = ${ranged(value, 'm/s')}`,
        };
  return limited(
    {
      id: 'speed',
      label: 'Peak speed',
      symbol: 'v_pk',
      value,
      unit: 'm/s',
      ...calculation,
      note:
        'One third of the time each for acceleration, constant speed and deceleration; a move list has its own limits. The limit is the speed ' +
        'that trips the drive.',
    },
    { value: p.speedLimit, side: 'max' },
    beyondText(
      value,
      p.speedLimit,
      'm/s',
      (own, most) => `The moves reach ${own}, but the drive trips at ${most}.`,
    ),
  );
}

function acceleration({ job, p, motion }: CandidateFacts): Figured {
  const { point, move } = extreme(motion, ({ acceleration }) => Math.abs(acceleration));
  const value = Math.abs(point.acceleration);
  const top = Math.abs(peakSpeed(motion).point.speed);
  const ramp = job.values.moveTime / 3;
  const rounding = p.acceleration / p.jerk;
  const calculation =
    p.program === 'list'
      ? {
          formula: 'a_pk = max |a(t)| over all moves of the list',
          numbers: `move ${move + 1}: ${inUnit(value, 'm/s²')}`,
        }
      : {
          formula: 'a_pk = v_pk/(t_m/3 − t_j), t_j = t_m/12',
          numbers: `${ranged(top, 'm/s')}/(${ranged(ramp, 's')} − ${ranged(rounding, 's')}) = ${inUnit(value, 'm/s²')}`,
        };
  return plain({
    id: 'acceleration',
    label: 'Peak acceleration',
    symbol: 'a_pk',
    value,
    unit: 'm/s²',
    ...calculation,
    note: 'A quarter of each ramp rounds each of its corners, which limits the jerk.',
  });
}

function duration({ forces, moving }: CandidateFacts): Figured {
  const cycle = totalTime(forces);
  return plain({
    id: 'dutyFactor',
    label: 'Cyclic duration factor',
    symbol: 'ED',
    value: moving,
    unit: '%',
    formula: 'ED = t_moving/t_cycle',
    numbers: `${ranged(moving * cycle, 's')}/${ranged(cycle, 's')} = ${inUnit(moving, '%')}`,
    note: 'Share of the cycle in motion, as in the duty types of IEC 60034-1. A vertical axis also loads its motor at standstill.',
  });
}

function mass({ p, loads }: CandidateFacts): Figured {
  const coils = translatingMotorMass(p);
  const screw = p.lead > 0;
  const turning = motorSideMass(p) - coils;
  const own = `${ranged(loadSideMass(p), 'kg')} + ${p.motorCount} · ${ranged(p.coilMass, 'kg')}`;
  return plain({
    id: 'mass',
    label: 'Moved mass',
    symbol: 'M',
    value: loads.mass,
    unit: 'kg',
    formula: screw ? 'M = m_p + m_t + N m_c + (2π/p_h)² J' : 'M = m_p + m_t + N m_c',
    numbers: screw
      ? `${own} + (2π/${ranged(p.lead, 'm')})² · ${ranged(p.rotorInertia, 'kg·m²')} = ` +
        `${ranged(loads.mass - turning, 'kg')} + ${ranged(turning, 'kg')} = ${ranged(loads.mass, 'kg')}`
      : `${own} = ${ranged(loads.mass, 'kg')}`,
    note: screw
      ? 'Payload, table and nut, plus the inertia of rotor, coupling and screw as an equivalent mass.'
      : 'Payload, table and coil units: a direct drive has nothing else to accelerate.',
  });
}

function match({ p, loads }: CandidateFacts): Figured {
  if (p.lead > 0) {
    const load = referredInertia(loads.travellingMass, p.lead);
    const value = load / p.rotorInertia;
    return plain({
      id: 'inertiaMatch',
      label: 'Load over motor inertia',
      symbol: 'J_L/J',
      value,
      unit: '',
      formula: 'J_L/J = (m_p + m_t + N m_c) (p_h/2π)²/J',
      numbers: `${ranged(loads.travellingMass, 'kg')} · (${ranged(p.lead, 'm')}/2π)²/${ranged(p.rotorInertia, 'kg·m²')} = ${inUnit(value, '')}`,
      note: 'Load inertia referred to the motor over the inertia of motor, coupling and screw. About 1 needs the least torque to accelerate; above 10 is hard to tune (common practice, no source).',
    });
  }
  const value = loadSideMass(p) / motorSideMass(p);
  return plain({
    id: 'inertiaMatch',
    label: 'Load over motor mass',
    symbol: 'm_2/m_1',
    value,
    unit: '',
    formula: 'm_2/m_1 = (m_p + m_t)/(N m_c)',
    numbers: `${ranged(loadSideMass(p), 'kg')}/(${p.motorCount} · ${ranged(p.coilMass, 'kg')}) = ${inUnit(value, '')}`,
    note: 'Load mass over the moving mass of the motor itself.',
  });
}
