import {
  STEEL_DENSITY,
  STEEL_MODULUS,
  STEEL_SHEAR_MODULUS,
  screwDiameter,
  screwLength,
} from '../axis/screw.ts';
import { inUnit, ranged } from '../core/format.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { CandidateFacts } from './facts.ts';
import { beyondText, type Figured, limited, plain } from './figure.ts';
import { peakSpeed } from './motionFigures.ts';
import { nutThrust } from './nutThrust.ts';
import {
  areaMoment,
  axialStiffness,
  BENDING_ROOT,
  BUCKLING_LENGTH,
  bendingFrequency,
  elongation,
  eulerLoad,
  screwTorque,
  twistStiffness,
} from './shaft.ts';

/** Share of the critical speed that a screw is run at, and of its buckling load that it is pressed with. Common practice, no source. */
const SPEED_SHARE = 0.8;
const LOAD_SHARE = 0.5;

/** What a screw has to stand besides; nothing without one, and no strength of a shaft whose section is not stated. */
export function screwFigures(facts: CandidateFacts): Figured[] {
  const { p } = facts;
  if (p.lead === 0) return [];
  const torques = [peakTorque(facts), rmsTorque(facts)];
  return p.screwRigidity === 0 ? torques : [...torques, turning(facts), buckling(facts), growth(facts)];
}

/** At the nut, where the force is largest. */
function worstThrust(facts: CandidateFacts) {
  const { point, direction, force } = facts.worst;
  return nutThrust(facts, force, point, direction);
}

function peakTorque(facts: CandidateFacts): Figured {
  const { p, peakForce } = facts;
  const { inertia, drag, thrust } = worstThrust(facts);
  const isDriven = thrust * drag > 0;
  const efficiency = thrust / (thrust + drag);
  const through = isDriven ? screwTorque(thrust, p.lead, efficiency) : screwTorque(thrust + drag, p.lead, 1);
  const turn = screwTorque(inertia, p.lead, 1);
  const value = screwTorque(peakForce, p.lead, 1);
  const start = isDriven
    ? `${ranged(thrust, 'N')} · ${ranged(p.lead, 'm')}/(2π · ${inUnit(efficiency, '%')})`
    : `(${ranged(thrust, 'N')} + ${ranged(drag, 'N')}) · ${ranged(p.lead, 'm')}/2π`;
  return plain({
    id: 'peakTorque',
    label: 'Peak torque of the motor',
    symbol: 'T_pk',
    value,
    unit: 'N·m',
    formula: 'T_pk = |F_n p_h/(2πη) + J dω/dt| + T_cogging = F_pk p_h/2π',
    numbers: `|${start} + ${inUnit(turn, 'N·m')}| = ${inUnit(Math.abs(through + turn), 'N·m')}; with cogging ${inUnit(value, 'N·m')}`,
    note: 'F_n: thrust of the nut where the force is largest. η follows from the drag of nut and bearings in the model, η = F_n/(F_n + F_drag); where the thrust drives the screw, the drag is subtracted instead.',
  });
}

function rmsTorque({ p, rmsForce }: CandidateFacts): Figured {
  const value = screwTorque(rmsForce, p.lead, 1);
  return plain({
    id: 'rmsTorque',
    label: 'RMS torque of the motor',
    symbol: 'T_rms',
    value,
    unit: 'N·m',
    formula: 'T_rms = F_rms p_h/2π',
    numbers: `${ranged(rmsForce, 'N')} · ${ranged(p.lead, 'm')}/2π = ${inUnit(value, 'N·m')}`,
    note: 'F_rms already includes the drag of nut and bearings and the inertia of the screw.',
  });
}

function shaftOf(p: Parameters) {
  return {
    diameter: screwDiameter(p),
    length: screwLength(p),
    modulus: STEEL_MODULUS,
    density: STEEL_DENSITY,
  };
}

function turning({ p, motion }: CandidateFacts): Figured {
  const speed = Math.abs(peakSpeed(motion).point.speed);
  const value = speed / p.lead;
  const shaft = shaftOf(p);
  const critical = bendingFrequency(shaft, BENDING_ROOT.fixedSupported);
  const limit = SPEED_SHARE * critical;
  return limited(
    {
      id: 'screwSpeed',
      label: 'Speed of the screw',
      symbol: 'n',
      value,
      unit: '1/min',
      formula: 'n = v_pk/p_h; n_crit = λ² d/(8π l²) √(E/ρ), λ = 3.9266',
      numbers:
        `${ranged(speed, 'm/s')}/${ranged(p.lead, 'm')} = ${inUnit(value, '1/min')}; n_crit = 3.9266² · ${ranged(shaft.diameter, 'm')}/(8π (${ranged(shaft.length, 'm')})²) · ` +
        `${inUnit(Math.sqrt(shaft.modulus / shaft.density), 'm/s', 4)} = ${inUnit(critical, '1/min')}`,
      note: 'First bending speed of a shaft that is fixed at one end and supported at the other (Euler-Bernoulli beam), over its whole length: the nut is not counted as a support. The limit is 80 % of it (common practice, no source). d: root diameter, from E·A of the screw.',
    },
    { value: limit, side: 'max' },
    beyondText(
      value,
      limit,
      '1/min',
      (own, most) => `The screw turns at ${own}, but at its length, whirling allows ${most}.`,
    ),
  );
}

/** From the fixed bearing to the nut where it is furthest, m. */
function furthest({ p, motion }: CandidateFacts): number {
  return p.screwSpan + Math.max(...motion.flatMap(({ points }) => points.map(({ position }) => position)));
}

function buckling(facts: CandidateFacts): Figured {
  const { p, worst } = facts;
  const { inertia, drag, thrust } = worstThrust(facts);
  const value = Math.abs(thrust);
  const length = furthest(facts);
  const moment = areaMoment(screwDiameter(p));
  const load = eulerLoad(STEEL_MODULUS, moment, length, BUCKLING_LENGTH.fixedSupported);
  const limit = LOAD_SHARE * load;
  return limited(
    {
      id: 'screwLoad',
      label: 'Thrust on the screw',
      symbol: 'F_n',
      value,
      unit: 'N',
      formula: 'F_n = |F − (2π/p_h)² J a − F_drag|; P_cr = π² E I/(0.699 l_n)², I = πd⁴/64',
      numbers:
        `|${ranged(worst.force, 'N')} − ${ranged(inertia, 'N')} − ${ranged(drag, 'N')}| = ${ranged(value, 'N')}; P_cr = π² · ${inUnit(STEEL_MODULUS, 'kN/mm²')} · ` +
        `${inUnit(moment, 'mm⁴')}/(0.699 · ${ranged(length, 'm')})² = ${ranged(load, 'N')}`,
      note: 'Thrust of the nut where the force is largest, against Euler’s critical load of the shaft between its fixed bearing and the nut at the far end of the moves. The limit is half of it (common practice, no source).',
    },
    { value: limit, side: 'max' },
    beyondText(
      value,
      limit,
      'N',
      (own, most) => `The thrust on the screw is ${own}, but buckling allows ${most}.`,
    ),
  );
}

function growth(facts: CandidateFacts): Figured {
  const { p, job } = facts;
  const length = furthest(facts);
  const value = elongation(p.screwExpansion, length, 1);
  const { growthLimit } = job.values;
  const allowed =
    growthLimit > 0
      ? ` The thermal drift allowed, ${ranged(growthLimit, 'm')}, is reached at ${inUnit(growthLimit / value, 'K')}, unless a scale on the table measures it.`
      : '';
  return plain({
    id: 'growthPerKelvin',
    label: 'Growth of the screw per kelvin',
    symbol: 'Δl',
    value,
    unit: 'µm',
    formula: 'Δl = α_k l_n · 1 K',
    numbers: `${inUnit(p.screwExpansion, 'µm/(m·K)')} · ${ranged(length, 'm')} · 1 K = ${ranged(value, 'µm')}`,
    note: `Up to the nut at the far end of the moves.${allowed}`,
  });
}

/** Stiffness from motor to table, m/N in series; for a screw with the nut at the far end. */
export function stiffness(facts: CandidateFacts): Figured {
  const { p } = facts;
  const hasShaft = p.screwRigidity > 0;
  const length = furthest(facts);
  const shaft = hasShaft ? axialStiffness(p.screwRigidity, length) : Infinity;
  const value = 1 / (1 / p.linkStiffness + 1 / shaft);
  return plain({
    id: 'stiffness',
    label: 'Stiffness from motor to table',
    symbol: 'k',
    value,
    unit: 'N/µm',
    formula: hasShaft ? '1/k = 1/k_12 + l_n/(E A)' : 'k = k_12',
    numbers: hasShaft
      ? `1/(1/${ranged(p.linkStiffness, 'N/µm')} + 1/(${inUnit(p.screwRigidity, 'kN')}/${ranged(length, 'm')})) = ` +
        `1/(1/${ranged(p.linkStiffness, 'N/µm')} + 1/${ranged(shaft, 'N/µm')}) = ${ranged(value, 'N/µm')}`
      : ranged(value, 'N/µm'),
    note: hasShaft
      ? `Nut and bearings in series with the shaft, the nut at the far end of the moves. Torsion of the shaft is neglected, here and in the simulation; with it: ${ranged(twisting(facts, value), 'N/µm')}.`
      : 'Mounting of all coil units together.',
  });
}

/** What a stiffness comes to when the shaft also twists between motor and nut, N/m: a turn is a lead. */
function twisting(facts: CandidateFacts, untwisted: number): number {
  const { p } = facts;
  const twist = twistStiffness(STEEL_SHEAR_MODULUS, screwDiameter(p), furthest(facts));
  return 1 / (1 / untwisted + (p.lead / (2 * Math.PI)) ** 2 / twist);
}
