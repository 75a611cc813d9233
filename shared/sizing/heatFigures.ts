import { COPPER_ALPHA, windingToAmbientResistance } from '../axis/motor.ts';
import { sinkTemperature } from '../axis/temperature.ts';
import { inUnit, ranged } from '../core/format.ts';
import { inSystem, unitSystem } from '../core/unitSystem.ts';
import { totalTime } from './duty.ts';
import type { CandidateFacts } from './facts.ts';
import { beyondText, CLOSE, type Figured, limited, plain } from './figure.ts';

/** IEC 60085: letters of the thermal classes. */
const CLASSES: Readonly<Record<number, string>> = { 105: 'A', 120: 'E', 130: 'B', 155: 'F', 180: 'H' };
/** IEC 60034-1: rise of a winding that its class allows over air of 40 °C, K, in the mean, as its resistance tells (from memory). */
const MEAN_RISES: Readonly<Record<number, number>> = { 105: 60, 120: 75, 130: 80, 155: 105, 180: 125 };
const STANDARD_AIR = 40;

export function heatFigures(facts: CandidateFacts): Figured[] {
  return [winding(facts), ...copper(facts), ...energy(facts)];
}

/** The letter of a thermal class after IEC 60085, or null: '130 °C is class B'. */
export function thermalClass(limit: number): string | null {
  return CLASSES[limit] ?? null;
}

/** Mean temperature that a winding of this thermal class may have by its resistance after IEC 60034-1, °C; null for none of the classes. */
export function meanWindingLimit(limit: number): number | null {
  const rise = MEAN_RISES[limit];
  return rise === undefined ? null : STANDARD_AIR + rise;
}

/** As the formula takes it, whatever the reader has for a temperature. */
function celsius(temperature: number): string {
  return inSystem('metric', () => inUnit(temperature, '°C'));
}

function winding({ p, heat, rmsCurrent }: CandidateFacts): Figured {
  const value = heat?.winding ?? Infinity;
  const letter = thermalClass(p.windingLimit);
  const className = letter ? ` (thermal class ${letter} of IEC 60085)` : '';
  const mean = meanWindingLimit(p.windingLimit);
  const standard = mean
    ? ` One temperature stands for the whole winding: IEC 60034-1 allows the mean of a winding of this class ${inUnit(mean, '°C')} in air of ${inUnit(STANDARD_AIR, '°C', 2)} and keeps the rest for its hot spot.`
    : '';
  const resistance = inUnit(windingToAmbientResistance(p), 'K/W');
  const calculation = heat
    ? `(${celsius(heat.base)} + ${resistance} · ${ranged(heat.coldCopper, 'W')} · ${inUnit(1 - 20 * COPPER_ALPHA, '')})/` +
      `(1 − ${COPPER_ALPHA}/K · ${resistance} · ${ranged(heat.coldCopper, 'W')}) = ${celsius(value)}${unitSystem() === 'inch' ? ` = ${inUnit(value, '°C')}` : ''}; P = ${ranged(heat.copper, 'W')}`
    : `α R_th P_20 is above 1: the loss of ${ranged(rmsCurrent, 'A')} rises faster with temperature than heat is removed`;
  const still = p.speedCooling > 0 ? ', the draught of its own motion left out' : '';
  const cool = Math.min(p.ambient, sinkTemperature(p));
  // As a share of the rise that is allowed; close as well where the drive begins to lower its current.
  const rise = (value - cool) / (p.windingLimit - cool);
  const used = rise <= 1 && value > p.foldbackTemperature ? Math.max(rise, (1 + CLOSE) / 2) : rise;
  return limited(
    {
      id: 'windingTemperature',
      label: 'Winding temperature, steady state, calculated',
      symbol: 'T_w',
      value,
      unit: '°C',
      formula:
        'T_w = T_0 + R_th P, P = P_20 (1 + α(T_w − 20 °C)), so T_w = (T_0 + R_th P_20 (1 − 20 K α))/(1 − α R_th P_20)',
      numbers: `${calculation}; limit ${inUnit(p.windingLimit, '°C')}${className}, current fold-back from ${inUnit(p.foldbackTemperature, '°C')}`,
      note: `P_20 = 1.5 R_20 i_rms²/N, with magnets at their temperature then; T_0: room or coolant, plus the rise from iron and guide losses. The better cooling of a moving coil is neglected, which is on the safe side.${standard}`,
    },
    { value: p.windingLimit, side: 'max' },
    heat
      ? beyondText(
          value,
          p.windingLimit,
          '°C',
          (own, most) => `The winding would settle at ${own}${still}, but its limit is ${most}.`,
        )
      : 'The winding has no steady state: its loss rises faster with temperature than its heat can be removed.',
    used,
  );
}

function copper({ heat, rmsCurrent }: CandidateFacts): Figured[] {
  if (!heat) return [];
  return [
    plain({
      id: 'copperLoss',
      label: 'Copper loss, mean, warm',
      symbol: 'P',
      value: heat.copper,
      unit: 'W',
      formula: 'P = 1.5 R i_rms²/N, R = R_20 (1 + α (T_w − 20 °C))',
      numbers: `${ranged(heat.coldCopper, 'W')} at 20 °C · (1 + ${COPPER_ALPHA}/K · (${celsius(heat.winding)} − 20 °C)) = ${ranged(heat.copper, 'W')}`,
      note: `All motors together, at ${ranged(rmsCurrent, 'A')} (RMS of the amplitude). The mean over a cycle once everything is warm.`,
    }),
  ];
}

function energy({ heat, powers, forces }: CandidateFacts): Figured[] {
  if (!heat) return [];
  const { guide, iron, nut, process } = powers;
  const cycle = totalTime(forces);
  const mean = heat.copper + guide + iron + nut + process;
  const terms = [heat.copper, guide, iron, nut, process]
    .filter((power) => power > 0)
    .map((power) => ranged(power, 'W'))
    .join(' + ');
  return [
    plain({
      id: 'energy',
      label: 'Net energy per cycle, calculated',
      symbol: 'E',
      value: mean * cycle,
      unit: 'J',
      formula: 'E = (P + P_guide + P_iron + P_nut + P_process) t_cycle',
      numbers: `(${terms}) · ${ranged(cycle, 's')} = ${ranged(mean * cycle, 'J')}`,
      note: 'What becomes heat or work on the process once the axis is warm. Braking energy is assumed to stay in the bus; amplifier losses are neglected.',
    }),
  ];
}
