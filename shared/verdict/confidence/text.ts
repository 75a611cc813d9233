import { shortest } from '../../core/format.ts';
import { type Ranges, UNCERTAIN_NAMES, uncertain } from '../../study/ranges.ts';
import type { Estimate } from '../../tolerance/summary.ts';
import { listed, sentence } from '../text.ts';
import type { Confidence, Counted, Way } from './confidence.ts';

/**
 * 'Of 1000 jobs drawn within these ranges, the choice stays A in 93.1 % …', by simulation where there is any.
 * @param isBrief without the reasons and intervals of what else is chosen
 */
export function confidenceSentence({ calculated, simulated }: Confidence, isBrief = false): string {
  return simulated
    ? countedSentence(simulated, ' and simulated', isBrief)
    : countedSentence(calculated, ', by calculation', isBrief);
}

export function countedSentence({ drawn, stays, ways }: Counted, how: string, isBrief = false): string {
  const staying = ways.find((way) => way.stays);
  const others = ways.filter((way) => !way.stays);
  const isNone = staying?.letters.length === 0;
  const chosen = staying ? `the choice stays ${listed(staying.letters, 'or')} in` : 'the choice stays in';
  const what = isNone ? 'still no drive does the job in' : chosen;
  const whole = isNone ? 'any of them' : 'all of them';
  const often = stays.share === 1 ? whole : percent(stays.share);
  const otherwise =
    others.length === 0 ? '' : `; otherwise ${listed(others.map((way) => wayText(way, isBrief)))}`;
  return sentence(
    `Of ${drawn} jobs drawn within these ranges${how}, ${what} ${often} (${intervalText(stays)})${otherwise}`,
  );
}

function wayText({ letters, share, reason }: Way, isBrief: boolean): string {
  const who = letters.length === 0 ? 'no drive does the job' : `it is ${listed(letters, 'or')}`;
  if (isBrief) return `${who} in ${percent(share.share)}`;
  const why = reason === null ? '' : `, mostly because ${reason}`;
  return `${who} in ${percent(share.share)} (${intervalText(share, '')}${why})`;
}

function intervalText({ low, high }: Estimate, name = '95 % confidence interval '): string {
  return `${name}${percent(low).replace(/ %$/, '')} to ${percent(high)}`;
}

/** To a tenth of a per cent; what is left of a whole is no whole. */
function percent(share: number): string {
  const tenths = Math.round(1000 * share) / 1000;
  if (share > 0 && tenths === 0) return 'less than 0.1 %';
  if (share < 1 - Number.EPSILON && tenths === 1) return 'more than 99.9 %';
  return tenths === 1 ? '100 %' : `${(100 * tenths).toFixed(1)} %`;
}

/** 'payload ±5 %, friction ±30 %'; what is taken as stated is left out. */
export function rangesText(ranges: Ranges): string {
  const given = UNCERTAIN_NAMES.filter((name) => ranges[name] > 0);
  if (given.length === 0) return 'nothing: every input is taken as stated';
  return given
    .map((name) => `${uncertain(name).label.toLowerCase()} ±${shortest(ranges[name], '%')}`)
    .join(', ');
}

/** What of the verdict follows the inputs from job to job, and what does not. */
export function scopeText({ simulated }: Confidence): string {
  const settling = simulated
    ? `The moves of the first ${simulated.drawn} jobs were simulated anew, with the gains of the drive as they are.`
    : 'Settling is held at what was simulated for the job as stated.';
  return (
    'Jobs are drawn uniformly within the ranges; friction, force constant, stiffness and price are drawn for each drive separately. ' +
    'The sizing of each drive is recalculated; winding temperature, thermal growth and energy of the simulated day follow in proportion to that calculation. ' +
    `${settling} Speed ripple, positioning, smallest step and wear are held at what was simulated. Ranges are common practice, no source, unless you enter your own.`
  );
}
