import {
  STEEL_DENSITY,
  STEEL_MODULUS,
  STEEL_SHEAR_MODULUS,
  screwDiameter,
  screwLength,
} from '../axis/screw.ts';
import { inUnit, ranged } from '../core/format.ts';
import { optionText } from '../core/parameters/row.ts';
import { PARAMETERS, type Parameters } from '../core/parameters/table.ts';
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
  thermalForce,
  twistStiffness,
} from './shaft.ts';

/** Share of the critical speed that a screw is run at, and of its buckling load that it is pressed with. Common practice, no source. */
const SPEED_SHARE = 0.8;
const LOAD_SHARE = 0.5;

/** What follows from how the ends of a screw are held; the end at the motor is fixed. */
const ENDS = {
  supported: {
    root: BENDING_ROOT.fixedSupported,
    effective: BUCKLING_LENGTH.fixedSupported,
    text: 'fixed at one end and supported at the other',
  },
  fixed: {
    root: BENDING_ROOT.fixedFixed,
    effective: BUCKLING_LENGTH.fixedFixed,
    text: 'fixed at both ends',
  },
  free: {
    root: BENDING_ROOT.fixedFree,
    effective: BUCKLING_LENGTH.fixedFree,
    text: 'fixed at one end and free at the other',
  },
} as const satisfies Record<Parameters['screwSupport'], unknown>;

/** What a screw has to stand besides; nothing without one, and no strength of a shaft whose section is not stated. */
export function screwFigures(facts: CandidateFacts): Figured[] {
  const { p } = facts;
  if (p.lead === 0) return [];
  const torques = [peakTorque(facts), rmsTorque(facts)];
  if (p.screwRigidity === 0) return torques;
  const stretched = p.screwSupport === 'fixed' ? [bearingLoad(facts)] : [];
  return [...torques, turning(facts), buckling(facts), growth(facts), ...stretched];
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

/** 'fixed–supported' */
function endsText({ screwSupport }: Parameters): string {
  return optionText(PARAMETERS.screwSupport, screwSupport);
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
  const { root, text } = ENDS[p.screwSupport];
  const critical = bendingFrequency(shaft, root);
  const limit = SPEED_SHARE * critical;
  return limited(
    {
      id: 'screwSpeed',
      label: 'Speed of the screw',
      symbol: 'n',
      value,
      unit: '1/min',
      formula: `n = v_pk/p_h; n_crit = λ² d/(8π l²) √(E/ρ), λ = ${root}`,
      numbers:
        `${ranged(speed, 'm/s')}/${ranged(p.lead, 'm')} = ${inUnit(value, '1/min')}; n_crit = ${root}² · ${ranged(shaft.diameter, 'm')}/(8π (${ranged(shaft.length, 'm')})²) · ` +
        `${inUnit(Math.sqrt(shaft.modulus / shaft.density), 'm/s', 4)} = ${inUnit(critical, '1/min')}`,
      note: `First bending speed of a shaft that is ${text} (Euler-Bernoulli beam), over its whole length: the nut is not counted as a support. The limit is 80 % of it (common practice, no source). d: root diameter, from E·A of the screw.`,
    },
    { value: limit, side: 'max' },
    beyondText(
      value,
      limit,
      '1/min',
      (own, most) =>
        `The screw turns at ${own}, but at its length, held ${endsText(p)}, whirling allows ${most}.`,
    ),
  );
}

/** From the fixed bearing to the nut, m, where it is nearest and where it is furthest. */
function reach({ p, motion }: CandidateFacts) {
  const positions = motion.flatMap(({ points }) => points.map(({ position }) => position));
  return {
    nearest: p.screwSpan + Math.min(...positions),
    furthest: p.screwSpan + Math.max(...positions),
  };
}

/** Longest piece of shaft between the nut and a fixed bearing, m. */
function longestPiece(facts: CandidateFacts): number {
  const { nearest, furthest } = reach(facts);
  return facts.p.screwSupport === 'fixed' ? Math.max(furthest, screwLength(facts.p) - nearest) : furthest;
}

/** From the fixed bearing to the nut where the shaft is softest, m: at the far end of the moves, or midway between two fixed bearings. */
function softest(facts: CandidateFacts): number {
  const { nearest, furthest } = reach(facts);
  if (facts.p.screwSupport !== 'fixed') return furthest;
  return Math.min(Math.max(screwLength(facts.p) / 2, nearest), furthest);
}

function buckling(facts: CandidateFacts): Figured {
  const { p, worst } = facts;
  const { inertia, drag, thrust } = worstThrust(facts);
  const value = Math.abs(thrust);
  const length = longestPiece(facts);
  const moment = areaMoment(screwDiameter(p));
  const { effective, text } = ENDS[p.screwSupport];
  const load = eulerLoad(STEEL_MODULUS, moment, length, effective);
  const limit = LOAD_SHARE * load;
  return limited(
    {
      id: 'screwLoad',
      label: 'Thrust on the screw',
      symbol: 'F_n',
      value,
      unit: 'N',
      formula: `F_n = |F − (2π/p_h)² J a − F_drag|; P_cr = π² E I/(${effective} l_n)², I = πd⁴/64`,
      numbers:
        `|${ranged(worst.force, 'N')} − ${ranged(inertia, 'N')} − ${ranged(drag, 'N')}| = ${ranged(value, 'N')}; P_cr = π² · ${inUnit(STEEL_MODULUS, 'kN/mm²')} · ` +
        `${inUnit(moment, 'mm⁴')}/(${effective} · ${ranged(length, 'm')})² = ${ranged(load, 'N')}`,
      note: `Thrust of the nut where the force is largest, against Euler’s critical load of the shaft between its fixed bearing and the nut at the far end of the moves${p.screwSupport === 'supported' ? '' : `, as a column ${text}`}. The limit is half of it (common practice, no source).`,
    },
    { value: limit, side: 'max' },
    beyondText(
      value,
      limit,
      'N',
      (own, most) => `The thrust on the screw is ${own}, but held ${endsText(p)}, buckling allows ${most}.`,
    ),
  );
}

function growth(facts: CandidateFacts): Figured {
  const { p, job } = facts;
  const length = reach(facts).furthest;
  const value = elongation(p.screwExpansion, length, 1);
  const { growthLimit } = job.values;
  const isFixedTwice = p.screwSupport === 'fixed';
  const takenUp = isFixedTwice ? p.screwPretension : 0;
  const allowed =
    growthLimit > 0
      ? ` The thermal drift allowed, ${ranged(growthLimit, 'm')}, is reached at ${inUnit(growthLimit / value + takenUp, 'K')}, unless a scale on the table measures it.`
      : '';
  const held = isFixedTwice
    ? ` Between its fixed ends the screw keeps its length until ${takenUp > 0 ? `the warming has used up its stretch of ${inUnit(takenUp, 'K')}` : 'it is warmer than when it was fitted: it is not stretched'}. From then on it pushes its second bearing away and grows as if that were not there, which is on the safe side.`
    : '';
  return plain({
    id: 'growthPerKelvin',
    label: 'Growth of the screw per kelvin',
    symbol: 'Δl',
    value,
    unit: 'µm',
    formula: 'Δl = α_k l_n · 1 K',
    numbers: `${inUnit(p.screwExpansion, 'µm/(m·K)')} · ${ranged(length, 'm')} · 1 K = ${ranged(value, 'µm')}`,
    note: `Up to the nut at the far end of the moves.${held}${allowed}`,
  });
}

/** What a screw between two fixed ends asks of its bearings. */
function bearingLoad(facts: CandidateFacts): Figured {
  const { p } = facts;
  const thrust = Math.abs(worstThrust(facts).thrust);
  const stretch = thermalForce(p.screwRigidity, p.screwExpansion, p.screwPretension);
  const perKelvin = thermalForce(p.screwRigidity, p.screwExpansion, 1);
  const value = stretch + thrust;
  const fitted = elongation(p.screwExpansion, screwLength(p), p.screwPretension);
  return plain({
    id: 'screwBearingLoad',
    label: 'Axial load on the bearings of the screw',
    symbol: 'F_b',
    value,
    unit: 'N',
    formula: 'F_b = E A α_k ϑ_p + F_n',
    numbers:
      `${inUnit(p.screwRigidity, 'kN')} · ${inUnit(p.screwExpansion, 'µm/(m·K)')} · ${inUnit(p.screwPretension, 'K')} + ${ranged(thrust, 'N')} = ` +
      `${ranged(stretch, 'N')} + ${ranged(thrust, 'N')} = ${ranged(value, 'N')}`,
    note:
      (p.screwPretension > 0
        ? `The stretching force, ${ranged(stretch, 'N')}, lengthens the shaft by ${ranged(fitted, 'm')} when it is fitted; the bearings and their housings have to carry it cold, with all of the thrust on one of them. Each kelvin of warming takes ${ranged(perKelvin, 'N')} off it. `
        : 'The screw is not stretched: the thrust alone, all of it on one bearing. ') +
      `Beyond the stretch each kelvin pushes the bearings apart by up to ${ranged(perKelvin, 'N')}. Compare with their static rating; their own stiffness is contained in k_12, their added friction is neglected.`,
  });
}

/** Stiffness from motor to table, m/N in series; for a screw with the nut where its shaft is softest. */
export function stiffness(facts: CandidateFacts): Figured {
  const { p } = facts;
  const hasShaft = p.screwRigidity > 0;
  const isFixedTwice = p.screwSupport === 'fixed';
  const length = softest(facts);
  const pieces = isFixedTwice ? [length, screwLength(p) - length] : [length];
  const shaft = hasShaft
    ? pieces.reduce((sum, piece) => sum + axialStiffness(p.screwRigidity, piece), 0)
    : Infinity;
  const value = 1 / (1 / p.linkStiffness + 1 / shaft);
  const beside = pieces.map((piece) => `${inUnit(p.screwRigidity, 'kN')}/${ranged(piece, 'm')}`).join(' + ');
  const where = isFixedTwice
    ? 'both sides of the shaft, which carry in parallel, the nut where the moves come nearest to the middle between the bearings'
    : 'the shaft, the nut at the far end of the moves';
  return plain({
    id: 'stiffness',
    label: 'Stiffness from motor to table',
    symbol: 'k',
    value,
    unit: 'N/µm',
    formula: hasShaft
      ? isFixedTwice
        ? '1/k = 1/k_12 + 1/(E A/l_n + E A/(l − l_n))'
        : '1/k = 1/k_12 + l_n/(E A)'
      : 'k = k_12',
    numbers: hasShaft
      ? `1/(1/${ranged(p.linkStiffness, 'N/µm')} + 1/(${beside})) = ` +
        `1/(1/${ranged(p.linkStiffness, 'N/µm')} + 1/${ranged(shaft, 'N/µm')}) = ${ranged(value, 'N/µm')}`
      : ranged(value, 'N/µm'),
    note: hasShaft
      ? `Nut and bearings in series with ${where}. Torsion of the shaft is neglected, here and in the simulation; with it: ${ranged(twisting(facts, value), 'N/µm')}.`
      : 'Mounting of all coil units together.',
  });
}

/** What a stiffness comes to when the shaft also twists between motor and nut, N/m: a turn is a lead. */
function twisting(facts: CandidateFacts, untwisted: number): number {
  const { p } = facts;
  const twist = twistStiffness(STEEL_SHEAR_MODULUS, screwDiameter(p), softest(facts));
  return 1 / (1 / untwisted + (p.lead / (2 * Math.PI)) ** 2 / twist);
}
