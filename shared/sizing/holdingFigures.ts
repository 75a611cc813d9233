import { BRAKE_MARGIN, brakeForce } from '../axis/gravity.ts';
import { continuousForce } from '../axis/motor.ts';
import { inUnit, ranged } from '../core/format.ts';
import type { CandidateFacts } from './facts.ts';
import { beyondText, type Figured, limited, plain } from './figure.ts';

/** At standstill one phase may carry the whole amplitude: its loss is twice the mean, so the force is 1/√2. */
const STALL = Math.SQRT1_2;
/** From the trip until a brake holds, s: 30 to 100 ms. Common practice, no source. */
export const BRAKE_TIME = 0.05;

/** What an axis that gravity pulls at needs beside its motion. */
export function holdingFigures(facts: CandidateFacts): Figured[] {
  return facts.loads.holding === 0 ? [] : [stall(facts), brake(facts), drop(facts)];
}

function stall({ p, loads }: CandidateFacts): Figured {
  const force = Math.abs(loads.holding);
  const max = STALL * continuousForce(p);
  const value = force / max;
  return limited(
    {
      id: 'stallUtilisation',
      label: 'Holding force, share of the stall force',
      symbol: 'F_hold/F_stall',
      value,
      unit: '%',
      formula: 'F_hold/F_stall, F_stall = N F_cont/√2',
      numbers: `${ranged(force, 'N')}/(${ranged(continuousForce(p), 'N')}/√2) = ${inUnit(value, '%')}`,
      note: 'Held at one place, one phase may carry the full amplitude all the time: twice the mean loss, so 71 % of the continuous force.',
    },
    { value: 1, side: 'max' },
    beyondText(
      force,
      max,
      'N',
      (own, most) =>
        `Holding takes ${own}, but at standstill the motors give ${most} continuously. Balance the weight or take a larger motor.`,
    ),
  );
}

function brake({ p, loads }: CandidateFacts): Figured {
  const force = Math.abs(loads.holding);
  return plain({
    id: 'brakeForce',
    label: 'Force that a brake has to hold',
    symbol: 'F_brake',
    value: brakeForce(p),
    unit: 'N',
    formula: 'F_brake = 2 F_hold',
    numbers: `${BRAKE_MARGIN} · ${ranged(force, 'N')} = ${ranged(brakeForce(p), 'N')}`,
    note: 'What the counterbalance leaves, with a factor of two (common practice, no source). If the counterbalance can fail, the brake has to hold the whole weight. Local safety rules decide.',
  });
}

function drop({ loads }: CandidateFacts): Figured {
  const acceleration = Math.max(Math.abs(loads.holding) - loads.guide - loads.drag, 0) / loads.mass;
  const value = (acceleration * BRAKE_TIME ** 2) / 2;
  return plain({
    id: 'drop',
    label: 'Drop after a trip at standstill',
    symbol: 's_drop',
    value,
    unit: 'mm',
    formula: 's_drop = a t_b²/2, a = (F_hold − F_c)/M',
    numbers: `${inUnit(acceleration, 'm/s²')} · (${ranged(BRAKE_TIME, 's')})²/2 = ${ranged(value, 'm')}`,
    note: `Until a brake holds, ${ranged(BRAKE_TIME, 's')} after the trip (common practice, no source). Out of a downward motion it is more, by the speed times that time.`,
  });
}
