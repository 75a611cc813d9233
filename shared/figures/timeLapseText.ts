import { inUnit } from '../core/format.ts';
import type { Parameters } from '../core/parameters/table.ts';
import { approx, approxRanged, type Sentence, sentence } from '../core/sentence.ts';
import type { CoolantNeed, CoolingTarget, CoolingVerdict } from '../protocol/timeLapse.ts';

/** Beyond this many hours nobody asks for hundredths. */
const MANY_HOURS = 100;

/** A time of a duty in the unit a person would say: '12.3 s', '4.56 min', '1.20 h', '75900 h'. */
export function durationText(seconds: number): string {
  if (seconds < 60) return inUnit(seconds, 's');
  const hours = seconds / 3600;
  if (hours < 1) return inUnit(seconds, 'min');
  return hours < MANY_HOURS ? `${hours.toFixed(2)} h` : inUnit(seconds, 'h');
}

/** What each target asks of a coolant, and whether coolant and chiller are needed: one sentence each. */
export function coolingSentences(p: Parameters, verdict: CoolingVerdict): Sentence[] {
  return [...verdict.targets.map((target) => targetSentence(p, target)), chillerSentence(p, verdict)];
}

function targetSentence(p: Parameters, { of, limit, inAir, metInAir, coolant }: CoolingTarget): Sentence {
  const size = (value: number) => (of === 'winding' ? approx(value, '°C') : approxRanged(value, 'm'));
  const target =
    of === 'winding'
      ? sentence`Peak winding temperature below ${size(limit)}`
      : sentence`Thermal growth at the tool within ±${size(limit)}`;
  const long = inAir === null ? 'without limit' : sentence`${size(inAir)} in steady state`;
  if (metInAir) return sentence`${target}: met in room air, ${long}.`;
  if (coolant === null)
    return sentence`${target}: in air ${long}; no coolant at the carrier lowers that enough.`;
  return sentence`${target}: in air ${long}. ${coolantSentence(p, coolant)}`;
}

function coolantSentence(p: Parameters, { heat, carrier, temperature, conductance }: CoolantNeed): Sentence {
  const needed = sentence`A coolant has to remove ${approxRanged(heat, 'W')} and keep the carrier at
    ${approx(carrier, '°C')}: with the ${approx(p.carrierToCoolant, 'W/K')} of the cooled carrier it may be as warm as
    ${approx(temperature, '°C')}`;
  const ofScene = approx(p.coolantTemperature, '°C');
  return conductance === null
    ? sentence`${needed}; at ${ofScene} it is too warm.`
    : sentence`${needed}; at ${ofScene} a carrier with ${approx(conductance, 'W/K')} is enough.`;
}

function chillerSentence(p: Parameters, { chillerNeeded, heat, outOfReach }: CoolingVerdict): Sentence {
  if (outOfReach.length > 0) return [`Cooling alone does not meet every target (${outOfReach.join(', ')}).`];
  const [size, room] = [approxRanged(heat, 'W'), approx(p.ambient, '°C')];
  if (chillerNeeded)
    return sentence`A chiller for ${size} is needed: the coolant has to be colder than the room, ${room}.`;
  return heat > 0
    ? sentence`A coolant for ${size} is needed, but no chiller: as warm as the room, ${room}, it is cold enough.`
    : ['Neither a coolant nor a chiller is needed.'];
}
