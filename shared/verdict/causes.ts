import { armGrowth, scaleStrain, screwStrain } from '../axis/growth.ts';
import { motorConstants } from '../axis/motor.ts';
import { inUnit, ranged } from '../core/format.ts';
import { motorSideMass, movedMass, translatingMotorMass } from '../core/movedMass.ts';
import type { Parameters } from '../core/parameters/table.ts';
import { cycleMoves } from '../motion/cycle.ts';
import type { EnergyFlow } from '../protocol/accuracy.ts';
import type { JudgedCandidate } from './judgement.ts';
import { dayEnd, movesOf, testOf } from './read.ts';

/*
 * Why a figure is what it is, read from parameters and outcomes, never from what a drive is called. Beside a rival a cause is named
 * only when it explains the difference.
 */

/** From here on a part is most of the whole. */
const MAX = 0.5;
/** From here on a part is worth a word. */
const NOTABLE = 0.2;
/** A cause explains a difference when it goes at least this far the same way. */
const EXPLAINS = 1.1;

/** The strongest line of the scan's speed ripple in its bandwidth. */
export function rippleCause(candidate: JudgedCandidate): string | null {
  const test = testOf(candidate, 'ripple');
  const line = [...(test?.lines ?? [])].sort((a, b) => b.inBand - a.inBand)[0];
  if (!line) return null;
  const period = `every ${ranged(line.period, 'm')}`;
  return line.cause === null ? `strongest ${period}` : `from ${line.cause}, ${period}`;
}

const LOSSES: readonly { readonly of: keyof EnergyFlow; readonly text: string }[] = [
  { of: 'copper', text: 'copper loss' },
  { of: 'iron', text: 'iron loss' },
  { of: 'guide', text: 'guide friction' },
  { of: 'nut', text: 'friction of nut and bearings' },
];

/** What takes most of a cycle's energy. */
export function energyCause(candidate: JudgedCandidate): string | null {
  const flow = testOf(candidate, 'energy');
  if (!flow) return null;
  const net = flow.drawn - flow.returned;
  const { of, text } = LOSSES.reduce((max, each) => (flow[each.of] > flow[max.of] ? each : max));
  const share = flow[of] / net;
  return share > MAX && share <= 1 ? `${inUnit(share, '%', 2)} of it ${text}` : null;
}

/**
 * What moves the tool most when everything is warm: its arm, the scale it is measured by, or a screw that an encoder on the motor does
 * not see. The same terms as the growth of the model.
 */
export function growthCause(candidate: JudgedCandidate): string | null {
  const end = dayEnd(candidate);
  if (!end) return null;
  const { parameters: p } = candidate.scene;
  const reach = farthest(candidate);
  const table = end.table - p.ambient;
  const parts = [
    {
      size: armGrowth(p, end.table),
      text: `from the table, ${warmer(table)}, between scale and tool`,
    },
    { size: scaleStrain(p, end.table) * reach, text: `from the scale, ${warmer(table)}` },
    {
      size: p.encoderSide === 'motor' ? screwStrain(p, end.screw) * (p.screwSpan + reach) : 0,
      text: `from the screw, ${warmer(end.screw - p.ambient)}${stretchText(p)}, which the encoder on the motor does not see`,
    },
  ];
  return parts.reduce((max, each) => (Math.abs(each.size) > Math.abs(max.size) ? each : max)).text;
}

/** How much of its warming a stretched screw does not show. */
function stretchText({ screwSupport, screwPretension }: Parameters): string {
  const isStretched = screwSupport === 'fixed' && screwPretension > 0;
  return isStretched ? `, of which its stretch takes up ${inUnit(screwPretension, 'K', 2)}` : '';
}

/** The farthest from the middle of the travel that the job goes, m. */
function farthest({ scene: { parameters: p, moves } }: JudgedCandidate): number {
  return Math.max(...cycleMoves(p, moves).map(({ to }) => Math.abs(to)));
}

function warmer(kelvin: number): string {
  return `${inUnit(kelvin, 'K', 2)} above the room`;
}

/** Where the loop looks. */
export function encoderCause(candidate: JudgedCandidate, rival: JudgedCandidate | null): string | null {
  const onMotor = ({ scene }: JudgedCandidate) => scene.parameters.encoderSide === 'motor';
  if (!onMotor(candidate) || (rival && onMotor(rival))) return null;
  return 'its encoder sits on the motor and does not see the compliance behind it';
}

/** What a position is measured by: a screw with its lead error, or a scale with the error of its grade. */
export function scaleCause(candidate: JudgedCandidate, rival: JudgedCandidate | null): string | null {
  const { encoderSide, longError, longErrorPeriod } = candidate.scene.parameters;
  const other = rival?.scene.parameters.longError ?? 0;
  if (longError === 0 || longError < EXPLAINS * other) return encoderCause(candidate, rival);
  const error = `${ranged(longError, 'm')} within ${ranged(longErrorPeriod, 'm')}`;
  return encoderSide === 'motor'
    ? `its encoder on the motor does not see the lead error of the screw, ±${error}`
    : `its scale errs by up to ±${error}`;
}

/** How quick the loop is. */
export function crossoverCause(candidate: JudgedCandidate, rival: JudgedCandidate | null): string | null {
  const own = candidate.outcome.crossover;
  const other = rival?.outcome.crossover ?? null;
  if (own === null || other === null || own * EXPLAINS > other) return null;
  return `its loop crosses over at ${ranged(own, 'Hz')} against ${ranged(other, 'Hz')}`;
}

/** The force that an ampere gives, or the force that is asked. */
export function currentCause(candidate: JudgedCandidate, rival: JudgedCandidate | null): string | null {
  const [own, other] = [movesOf(candidate), rival && movesOf(rival)];
  if (!rival || !own || !other) return null;
  const [mine, its] = [ampereForce(candidate), ampereForce(rival)];
  const [byConstant, byForce] = [its / mine, own.rmsForce / other.rmsForce];
  if (Math.max(byConstant, byForce) < EXPLAINS) return null;
  return byConstant > byForce
    ? `its force per ampere is ${inUnit(mine, 'N')} against ${inUnit(its, 'N')}`
    : `it needs ${ranged(own.rmsForce, 'N')} RMS against ${ranged(other.rmsForce, 'N')}`;
}

function ampereForce({ scene }: JudgedCandidate): number {
  return motorConstants(scene.parameters).forcePerAmp;
}

/** More heat to carry away, or a worse way out for it. */
export function windingCause(candidate: JudgedCandidate, rival: JudgedCandidate | null): string | null {
  const [own, other] = [dayEnd(candidate), rival && dayEnd(rival)];
  if (!rival || !own || !other) return null;
  const rise = (each: JudgedCandidate, { winding }: { winding: number }) =>
    winding - each.scene.parameters.ambient;
  // All that the motor loses leaves by the same way, copper and iron alike.
  const loss = ({ copper, iron }: { copper: number; iron: number }) => copper + iron;
  const byLoss = loss(own) / loss(other);
  const byPath = rise(candidate, own) / loss(own) / (rise(rival, other) / loss(other));
  if (!(Math.max(byLoss, byPath) >= EXPLAINS)) return null;
  if (byPath >= byLoss)
    return (
      `each watt of loss in the motor warms it by ${inUnit(rise(candidate, own) / loss(own), 'K')}, ` +
      `against ${inUnit(rise(rival, other) / loss(other), 'K')}`
    );
  const kind = own.iron - other.iron > own.copper - other.copper ? 'iron' : 'copper';
  return `${ranged(own[kind], 'W')} of ${kind} loss against ${ranged(other[kind], 'W')}`;
}

/** How warm the magnets get: they follow the carrier in part. */
export function driftCause(candidate: JudgedCandidate): string | null {
  const end = dayEnd(candidate);
  if (!end) return null;
  const { magnetFollow, ambient } = candidate.scene.parameters;
  return `its magnets ${warmer(magnetFollow * (end.carrier - ambient))}`;
}

/** A mass that is more of a rotor than of a load. */
export function massCause(candidate: JudgedCandidate): string | null {
  const { parameters: p } = candidate.scene;
  const rotating = motorSideMass(p) - translatingMotorMass(p);
  const share = rotating / movedMass(p);
  return share > NOTABLE ? `${inUnit(share, '%', 2)} of it rotating inertia` : null;
}
