import { resistanceFactor } from '../axis/temperature.ts';
import { at } from '../core/at.ts';
import { inUnit, ranged } from '../core/format.ts';
import type { Job } from '../study/job.ts';
import { speedDuty } from './demand.ts';
import { totalTime, valueAt } from './duty.ts';
import { currentFor } from './electric.ts';
import type { CandidateFacts } from './facts.ts';
import { type Figured, plain } from './figure.ts';

/** The bus may rise to this over its nominal voltage before a resistor takes over: 390 V of 325 V. Common practice, no source. */
const BUS_RISE = 1.2;
const POINTS = 8;

/** What amplifier and supply have to carry. */
export function supplyFigures(facts: CandidateFacts): Figured[] {
  const flow = powerFlow(facts);
  return [peakPower(flow), brakingEnergy(facts, flow), brakeResistor(facts, flow)];
}

interface PowerFlow {
  /** Largest power drawn from the bus, W. */
  readonly peak: number;
  /** Energy that a single braking returns to the bus at most, and all that a cycle returns, J. */
  readonly largest: number;
  readonly returned: number;
  readonly cycle: number;
}

/** Electrical power P = F v + 1.5 R i²/N, windings as warm as the duty makes them. */
function powerFlow({ motion, forces, electrics, magnet, heat, p }: CandidateFacts): PowerFlow {
  const speeds = speedDuty(motion);
  const resistance = electrics.motor.resistance * resistanceFactor(heat?.winding ?? p.windingLimit);
  let [peak, largest, returned, braking] = [0, 0, 0, 0];
  for (const [k, { time, direction }] of motion.entries()) {
    for (let point = 0; point < POINTS; point++) {
      const share = (point + 0.5) / POINTS;
      const force = valueAt(at(forces, k), share);
      const current = currentFor(electrics, force, magnet);
      const power =
        force * direction * valueAt(at(speeds, k), share) +
        (1.5 * resistance * current ** 2) / electrics.count;
      peak = Math.max(peak, power);
      braking = power < 0 ? braking - (power * time) / POINTS : 0;
      if (power < 0) returned -= (power * time) / POINTS;
      largest = Math.max(largest, braking);
    }
  }
  return { peak, largest, returned, cycle: totalTime(forces) };
}

/** What the bus stores between its nominal voltage and the highest, J. */
function busRoom({ values: { busCapacitance, busVoltage } }: Job): number {
  return (busCapacitance * busVoltage ** 2 * (BUS_RISE ** 2 - 1)) / 2;
}

function peakPower({ peak }: PowerFlow): Figured {
  return plain({
    id: 'peakPower',
    label: 'Peak power from the bus',
    symbol: 'P_pk',
    value: peak,
    unit: 'W',
    formula: 'P_pk = max (F v + 1.5 R i²/N)',
    numbers: ranged(peak, 'W'),
    note: 'What amplifier and supply have to deliver for an instant, losses of the amplifier not included.',
  });
}

function brakingEnergy({ job }: CandidateFacts, { largest }: PowerFlow): Figured {
  const { busCapacitance, busVoltage } = job.values;
  const room = busRoom(job);
  return plain({
    id: 'brakingEnergy',
    label: 'Energy of the hardest braking',
    symbol: 'E_b',
    value: largest,
    unit: 'J',
    formula: 'E_b = −∫P dt where P < 0; the bus stores C (U_max² − U²)/2, U_max = 1.2 U',
    numbers: `${ranged(largest, 'J')}; the bus stores ${inUnit(busCapacitance, 'mF')} · (${ranged(BUS_RISE * busVoltage, 'V')})² less (${ranged(busVoltage, 'V')})², halved: ${ranged(room, 'J')}`,
    note:
      largest > room
        ? 'More than the bus stores: it needs a braking resistor or a supply that feeds back.'
        : 'The bus stores it; a resistor is needed for an emergency stop only.',
  });
}

function brakeResistor({ job }: CandidateFacts, { largest, returned, cycle }: PowerFlow): Figured {
  const room = busRoom(job);
  const value = largest > room && returned > 0 ? ((largest - room) / largest) * (returned / cycle) : 0;
  return plain({
    id: 'brakeResistor',
    label: 'Mean power of a braking resistor',
    symbol: 'P_b',
    value,
    unit: 'W',
    formula: 'P_b = (1 − E_bus/E_b) ΣE/t_cycle, 0 where the bus stores all',
    numbers: `${ranged(returned, 'J')} returned in ${ranged(cycle, 's')}, of which the bus does not store ${ranged(value * cycle, 'J')} = ${ranged(value, 'W')}`,
    note: 'As if every braking overflowed by the share of the hardest one, which is on the safe side. With a supply that feeds back to the mains it is 0.',
  });
}
