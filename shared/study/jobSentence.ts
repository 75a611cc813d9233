import { grouped, shortest } from '../core/format.ts';
import type { UnitSystem } from '../core/unitSystem.ts';
import { type Unit, unitIn } from '../core/units.ts';
import type { Job } from './job.ts';
import { motionAsked } from './motionAsked.ts';

const SECONDS_OF_HOUR = 3600;

/** Says back what a legal job is, in plain sentences; every figure follows from the job. */
export function jobSentence(job: Job, system: UnitSystem): string {
  const q = quantities(system);
  return [`${carry(job, q)}${place(job, q)}.`, follows(job, q), rest(job, q)].filter(Boolean).join(' ');
}

type Quantities = (value: number, unit: Unit, digits?: number) => string;

/** Rounded in the unit that is read, without zeros at the end. */
function quantities(system: UnitSystem): Quantities {
  return (value, unit, digits = 4) => shortest(value, unitIn(system, unit), digits);
}

function carry(job: Job, q: Quantities): string {
  const { payload, motion, stroke, moveTime, dwell, window } = job.values;
  const load = payload > 0 ? `Carry ${q(payload, 'kg')}` : 'Move the empty table';
  const arrive = `arrive within ±${q(window, 'µm')}`;
  if (motion === 'move list') {
    const { moves, cycleTime } = motionAsked(job);
    const cuts = moves.filter(({ cutting }) => cutting > 0);
    const force = Math.max(...cuts.map(({ cutting }) => cutting));
    const against =
      cuts.length === 0 ? '' : `, ${cuts.length} of them against up to ${q(force, 'N')} of process force`;
    return `${load} through a list of ${moves.length} moves in ${q(cycleTime, 's')}${against}, ${arrive}`;
  }
  const stand = dwell > 0 ? `dwell for ${q(dwell, 'ms')}, and return` : 'and return at once';
  return `${load} over ${q(stroke, 'mm')} in ${q(moveTime, 'ms')}, ${arrive}, ${stand}`;
}

function place({ values: { inclination, counterbalanced } }: Job, q: Quantities): string {
  if (inclination === 0) return '';
  const way =
    Math.abs(inclination) === Math.PI / 2
      ? 'straight up and down'
      : `on a slope of ${q(Math.abs(inclination), '°')}`;
  return `, ${way}${counterbalanced > 0 ? ` with ${q(counterbalanced, '%')} of the weight counterbalanced` : ''}`;
}

function follows(job: Job, q: Quantities): string {
  const { moves, cycleTime, topSpeed, topAcceleration } = motionAsked(job);
  const perHour = (moves.length / cycleTime) * SECONDS_OF_HOUR;
  return (
    `That is ${rate(perHour / 60)} moves per minute, ${rate(perHour)} per hour, with up to ${q(topSpeed, 'm/s', 3)} ` +
    `and ${q(topAcceleration, 'm/s²', 3)}.`
  );
}

function rest({ values }: Job, q: Quantities): string {
  const { scanSpeed, scanLength, rippleBandwidth, smallestStep, rippleLimit, growthLimit, dailyTime, days } =
    values;
  const step = smallestStep > 0 ? `makes steps of ${q(smallestStep, 'nm')}, ` : '';
  const scan =
    rippleLimit > 0
      ? `scans ${q(scanLength, 'mm')} at ${q(scanSpeed, 'mm/s')} with no more than ${q(rippleLimit, '%')} of ripple up to ${q(rippleBandwidth, 'Hz')}, and `
      : '';
  const drift =
    growthLimit > 0 ? ` with no more than ${q(growthLimit, 'µm')} of thermal drift at the tool` : '';
  const open = [
    ...(rippleLimit > 0 ? [] : ['A scan']),
    ...(growthLimit > 0 ? [] : ['a limit of thermal drift']),
  ];
  const left =
    open.length === 0
      ? ''
      : ` ${capital(open.join(' and '))} ${open.length > 1 ? 'are' : 'is'} not required.`;
  return `It ${step}${scan}runs ${q(dailyTime, 'h')} a day on ${days} days a year${drift}.${left}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Three significant digits. */
function rate(value: number): string {
  return grouped(Number(value.toPrecision(3)));
}
