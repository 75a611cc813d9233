import { GRAVITY } from '../axis/gravity.ts';
import { motorTracks, trackMass, tubularSize, unitLength } from '../axis/motorSize.ts';
import { nominalDiameter, screwLength } from '../axis/screw.ts';
import { inUnit, ranged } from '../core/format.ts';
import type { CandidateFacts } from './facts.ts';
import { beyondText, type Figured, limited, plain } from './figure.ts';
import { areaMoment, sag } from './shaft.ts';

/** A screw is at most this many diameters long: 40 to 70 (common practice, no source). */
const SLENDEST = 60;
/** Shaft of a tubular motor beyond coil unit and travel, at each end, for its supports, m. Common practice, no source. */
const SUPPORT = 0.05;
/** The shaft is a tube of stainless steel full of magnets: wall over its diameter, and Young's modulus, Pa. Common practice, no source; handbook. */
const TUBE_WALL = 1 / 16;
const TUBE_MODULUS = 1.93e11;
/** Share of the clearance that the sag may take. Common practice, no source. */
const CLEARANCE_SHARE = 0.5;

/** What lies along the travel: how long and heavy it is, and whether it stays straight. */
export function trackFigures(facts: CandidateFacts): Figured[] {
  const straight = facts.driveType === 'tubular' ? [shaftSag(facts)] : [];
  const slender = facts.driveType === 'screw' && facts.p.screwRigidity > 0 ? [slenderness(facts)] : [];
  return [installed(facts), all(facts), mass(facts), ...straight, ...slender];
}

/** Tracks beside each other, and coil units behind each other on the longest. */
function rowsOf({ driveType, p }: CandidateFacts) {
  const tracks = motorTracks(driveType, p.motorCount);
  const count = Math.max(...tracks) + 1;
  return { tracks: count, inRow: Math.ceil(p.motorCount / count) };
}

/** Of magnet track or screw: the travel and the coil units. */
function installedLength(facts: CandidateFacts): number {
  const { driveType, p, job } = facts;
  return driveType === 'screw'
    ? screwLength(p)
    : job.values.travel + rowsOf(facts).inRow * unitLength(driveType, p);
}

function installed(facts: CandidateFacts): Figured {
  const { driveType, p, job } = facts;
  const value = installedLength(facts);
  return plain({
    id: 'installedLength',
    label: 'Installed length of the drive',
    symbol: 'l',
    value,
    unit: 'mm',
    ...(driveType === 'screw'
      ? { formula: 'l = travel + ends', numbers: ranged(value, 'm') }
      : {
          formula: 'l = travel + N_row l_unit',
          numbers: `${ranged(job.values.travel, 'm')} + ${rowsOf(facts).inRow} · ${ranged(unitLength(driveType, p), 'm')} = ${ranged(value, 'm')}`,
        }),
    note: 'Magnet track or screw shaft. The length of the coil unit follows from its mass and pole pitch. Covers and buffers come on top.',
  });
}

function all(facts: CandidateFacts): Figured {
  const { tracks } = rowsOf(facts);
  const length = installedLength(facts);
  const value = tracks * length;
  return plain({
    id: 'trackLength',
    label: 'Length of all tracks or shafts',
    symbol: 'Σl',
    value,
    unit: 'm',
    formula: 'Σl = n l',
    numbers: `${tracks} · ${ranged(length, 'm')} = ${ranged(value, 'm')}`,
    note: 'Motors in parallel stand on two tracks beside each other, then behind each other.',
  });
}

function mass(facts: CandidateFacts): Figured {
  const each = trackMass(facts.driveType, facts.p);
  const length = installedLength(facts);
  const { tracks } = rowsOf(facts);
  const value = tracks * each * length;
  return plain({
    id: 'trackMass',
    label: 'Mass of track or shaft',
    symbol: 'm_l',
    value,
    unit: 'kg',
    formula: "m_l = n m' l",
    numbers: `${tracks} · ${inUnit(each, 'kg/m')} · ${ranged(length, 'm')} = ${ranged(value, 'kg')}`,
    note: 'At rest, on the bed. From the cross-section that the stage shows, at the density of its materials.',
  });
}

function shaftSag(facts: CandidateFacts): Figured {
  const { p } = facts;
  const { shaftRadius, coilInner } = tubularSize(p);
  const length = installedLength(facts) + 2 * SUPPORT;
  const outer = 2 * shaftRadius;
  const inner = outer * (1 - 2 * TUBE_WALL);
  const moment = areaMoment(outer) - areaMoment(inner);
  const weight = trackMass('tubular', p) * GRAVITY * Math.cos(p.inclination);
  const value = sag(weight, length, TUBE_MODULUS, moment);
  const limit = CLEARANCE_SHARE * (coilInner - shaftRadius);
  return limited(
    {
      id: 'shaftSag',
      label: 'Sag of the magnet shaft',
      symbol: 'f',
      value,
      unit: 'mm',
      formula: "f = 5 m' g l⁴/(384 E I), I = π (d⁴ − d_i⁴)/64",
      numbers: `5 · ${inUnit(weight, 'N/m')} · (${ranged(length, 'm')})⁴/(384 · ${inUnit(TUBE_MODULUS, 'kN/mm²')} · ${inUnit(moment, 'mm⁴')}) = ${ranged(value, 'm')}`,
      note: `Supported at both ends, ${ranged(SUPPORT, 'm')} beyond coil unit and travel; the tube carries, the magnets only weigh. The limit is half of the clearance of ${ranged(coilInner - shaftRadius, 'm')} (common practice, no source). Stage proportions, not a drawing.`,
    },
    { value: limit, side: 'max' },
    beyondText(
      value,
      limit,
      'm',
      (own, most) =>
        `The magnet shaft sags by ${own}, but half of its clearance is ${most}. Support it in the middle, or take a thicker one.`,
    ),
  );
}

function slenderness({ p }: CandidateFacts): Figured {
  const [length, diameter] = [screwLength(p), nominalDiameter(p)];
  const value = length / diameter;
  return limited(
    {
      id: 'slenderness',
      label: 'Length of the screw in diameters',
      symbol: 'l/d_0',
      value,
      unit: '',
      formula: 'l/d_0',
      numbers: `${ranged(length, 'm')}/${ranged(diameter, 'm')} = ${inUnit(value, '')}`,
      note: 'A longer shaft cannot be ground straight, and sags: 40 to 70 diameters (common practice, no source).',
    },
    { value: SLENDEST, side: 'max' },
    beyondText(
      value,
      SLENDEST,
      '',
      (own, most) => `The screw is ${own} diameters long, but no more than ${most} can be made straight.`,
    ),
  );
}
