import { inUnit, ranged } from '../core/format.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { CoolantNeed, CoolingTarget, CoolingVerdict } from '../protocol/timeLapse.ts';

/** A time of a duty in the unit a person would say: '12.3 s', '4.56 min', '1.20 h'. */
export function durationText(seconds: number): string {
  if (seconds < 60) return inUnit(seconds, 's');
  return seconds < 3600 ? inUnit(seconds, 'min') : `${(seconds / 3600).toFixed(2)} h`;
}

/** What each target asks of a coolant, and whether a chiller is needed: one sentence each. */
export function coolingSentences(p: Parameters, verdict: CoolingVerdict): string[] {
  return [...verdict.targets.map((target) => targetSentence(p, target)), chillerSentence(p, verdict)];
}

function targetSentence(p: Parameters, { of, limit, inAir, metInAir, coolant }: CoolingTarget): string {
  const size = (value: number) => (of === 'winding' ? inUnit(value, '°C') : ranged(value, 'm'));
  const target =
    of === 'winding'
      ? `Peak winding temperature below ${size(limit)}`
      : `Thermal growth at the tool within ±${size(limit)}`;
  const long = inAir === null ? 'without an end' : `in the end ${size(inAir)}`;
  if (metInAir) return `${target}: met in the air of the room, ${long}.`;
  if (coolant === null)
    return `${target}: in air ${long}, and no coolant at the carrier changes that enough.`;
  return `${target}: in air ${long}. ${coolantSentence(p, coolant)}`;
}

function coolantSentence(p: Parameters, { heat, carrier, temperature, conductance }: CoolantNeed): string {
  const present = inUnit(p.carrierToAir, 'W/K');
  const needed =
    `A coolant has to take ${ranged(heat, 'W')} and keep the carrier at ${inUnit(carrier, '°C')}: ` +
    `at ${inUnit(temperature, '°C')} through the ${present} the carrier has`;
  const ofScene = inUnit(p.coolantTemperature, '°C');
  return conductance === null
    ? `${needed}; at ${ofScene} it is too warm.`
    : `${needed}, or at ${ofScene} through ${inUnit(conductance, 'W/K')}.`;
}

function chillerSentence(p: Parameters, { chillerNeeded, heat, outOfReach }: CoolingVerdict): string {
  if (outOfReach.length > 0) return `Cooling alone does not meet every target (${outOfReach.join(', ')}).`;
  return chillerNeeded
    ? `A chiller for ${ranged(heat, 'W')} is needed: the coolant has to be colder than the room, ${inUnit(p.ambient, '°C')}.`
    : 'No chiller is needed.';
}
