import { inUnit, ranged } from '../format.ts';
import { motorConstants, motorSideMass, movedMass, translatingMotorMass } from '../motor.ts';
import type { EnergyFlow } from '../study/accuracy.ts';
import type { JudgedLane } from '../study/verdict.ts';
import { dayEnd, movesOf, testOf } from './read.ts';

/*
 * Why a figure is what it is, read from parameters and outcomes, never from what a drive is called. Beside a rival a cause is named
 * only when it explains the difference.
 */

/** From here on a part is most of the whole. */
const MOST = 0.5;
/** From here on a part is worth a word. */
const NOTABLE = 0.2;
/** A cause explains a difference when it goes at least this far the same way. */
const EXPLAINS = 1.1;

/** The strongest line of the scan's speed ripple. */
export function rippleCause(lane: JudgedLane): string | null {
  const line = testOf(lane, 'ripple')?.lines[0];
  if (!line) return null;
  const period = `every ${ranged(line.period, 'm')}`;
  if (line.cause === null) return `strongest ${period}`;
  // Terms that are told apart by their period are named with it.
  return / at \d/.test(line.cause) ? `from ${line.cause}` : `from ${line.cause}, ${period}`;
}

const LOSSES: readonly { readonly of: keyof EnergyFlow; readonly words: string }[] = [
  { of: 'copper', words: 'copper loss' },
  { of: 'iron', words: 'iron loss' },
  { of: 'guide', words: 'guide friction' },
  { of: 'nut', words: 'friction of nut and bearings' },
];

/** What takes most of a cycle's energy. */
export function energyCause(lane: JudgedLane): string | null {
  const flow = testOf(lane, 'energy');
  if (!flow) return null;
  const net = flow.drawn - flow.returned;
  const { of, words } = LOSSES.reduce((most, each) => (flow[each.of] > flow[most.of] ? each : most));
  const share = flow[of] / net;
  return share > MOST && share <= 1 ? `${inUnit(share, '%', 2)} of it ${words}` : null;
}

/**
 * What moves the tool most when everything is warm: its arm, the scale it is measured by, or a screw that an encoder on the motor does
 * not see. The same terms as the growth of the model.
 */
export function growthCause(lane: JudgedLane): string | null {
  const end = dayEnd(lane);
  if (!end) return null;
  const { parameters: p } = lane.scene;
  const reach = farthest(lane);
  const table = end.table - p.ambient;
  const parts = [
    {
      size: p.tableExpansion * p.toolArm * table,
      words: `from the table, ${warmer(table)}, between scale and tool`,
    },
    { size: p.scaleExpansion * reach * table, words: `from the scale, ${warmer(table)}` },
    {
      size:
        p.encoderSide === 'motor' ? p.screwExpansion * (p.screwSpan + reach) * (end.screw - p.ambient) : 0,
      words: `from the screw, ${warmer(end.screw - p.ambient)}, whose growth the encoder on the motor does not see`,
    },
  ];
  return parts.reduce((most, each) => (Math.abs(each.size) > Math.abs(most.size) ? each : most)).words;
}

/** The farthest from the middle of the travel that the job goes, m. */
function farthest({ scene: { parameters: p, moves } }: JudgedLane): number {
  const places = p.program === 'list' ? moves.map(({ to }) => to) : [p.start, p.start + p.stroke];
  return Math.max(...places.map(Math.abs));
}

function warmer(kelvin: number): string {
  return `${inUnit(kelvin, 'K', 2)} above the room`;
}

/** Where the loop looks. */
export function encoderCause(lane: JudgedLane, rival: JudgedLane | null): string | null {
  const onMotor = ({ scene }: JudgedLane) => scene.parameters.encoderSide === 'motor';
  if (!onMotor(lane) || (rival && onMotor(rival))) return null;
  return 'its encoder sits on the motor and sees nothing of what gives way behind it';
}

/** How quick the loop is. */
export function crossoverCause(lane: JudgedLane, rival: JudgedLane | null): string | null {
  const own = lane.outcome.crossover;
  const other = rival?.outcome.crossover ?? null;
  if (own === null || other === null || own * EXPLAINS > other) return null;
  return `its loop crosses over at ${ranged(own, 'Hz')} against ${ranged(other, 'Hz')}`;
}

/** The force that an ampere gives, or the force that is asked. */
export function currentCause(lane: JudgedLane, rival: JudgedLane | null): string | null {
  const [own, other] = [movesOf(lane), rival && movesOf(rival)];
  if (!rival || !own || !other) return null;
  const [mine, its] = [ampereForce(lane), ampereForce(rival)];
  const [byConstant, byForce] = [its / mine, own.rmsForce / other.rmsForce];
  if (Math.max(byConstant, byForce) < EXPLAINS) return null;
  return byConstant > byForce
    ? `an ampere gives it ${inUnit(mine, 'N')} against ${inUnit(its, 'N')}`
    : `it needs ${ranged(own.rmsForce, 'N')} RMS against ${ranged(other.rmsForce, 'N')}`;
}

function ampereForce({ scene }: JudgedLane): number {
  return motorConstants(scene.parameters).forcePerAmp;
}

/** More heat to carry away, or a worse way out for it. */
export function windingCause(lane: JudgedLane, rival: JudgedLane | null): string | null {
  const [own, other] = [dayEnd(lane), rival && dayEnd(rival)];
  if (!rival || !own || !other) return null;
  const rise = (each: JudgedLane, { winding }: { winding: number }) =>
    winding - each.scene.parameters.ambient;
  const byLoss = own.copper / other.copper;
  const byPath = rise(lane, own) / own.copper / (rise(rival, other) / other.copper);
  if (!(Math.max(byLoss, byPath) >= EXPLAINS)) return null;
  return byLoss > byPath
    ? `${ranged(own.copper, 'W')} of copper loss against ${ranged(other.copper, 'W')}`
    : `each watt of copper loss warms it by ${inUnit(rise(lane, own) / own.copper, 'K')}, ` +
        `against ${inUnit(rise(rival, other) / other.copper, 'K')}`;
}

/** How warm the magnets get: they follow the carrier in part. */
export function driftCause(lane: JudgedLane): string | null {
  const end = dayEnd(lane);
  if (!end) return null;
  const { magnetFollow, ambient } = lane.scene.parameters;
  return `its magnets ${warmer(magnetFollow * (end.carrier - ambient))}`;
}

/** A mass that is more of a rotor than of a load. */
export function massCause(lane: JudgedLane): string | null {
  const { parameters: p } = lane.scene;
  const rotating = motorSideMass(p) - translatingMotorMass(p);
  const share = rotating / movedMass(p);
  return share > NOTABLE ? `${inUnit(share, '%', 2)} of it the inertia of what rotates` : null;
}
