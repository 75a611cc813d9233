import { inUnit } from '../core/format.ts';
import type { Job } from '../study/job.ts';
import type { Contrast } from './contrasts.ts';
import type { JudgedCandidate } from './judgement.ts';
import type { Speech } from './rows/row.ts';
import { factorText } from './text.ts';

/** As large, larger, smaller. */
const DEGREES: Readonly<Record<Speech['measure'], readonly [as: string, more: string, less: string]>> = {
  size: ['large', 'larger', 'smaller'],
  length: ['long', 'longer', 'shorter'],
  height: ['high', 'higher', 'lower'],
  warmth: ['warm', 'warmer', 'cooler'],
};

/** 'draws 38 % less RMS current (1.20 A against 1.94 A)', 'has a speed ripple eleven times as large (…)'. */
export function contrastClause(contrast: Contrast): string {
  return `${verbPhrase(contrast)} (${figures(contrast)})`;
}

/** The same with the reason why the worse of the two is worse, where there is one. */
export function explainedClause(
  contrast: Contrast,
  job: Job,
  candidate: JudgedCandidate,
  rival: JudgedCandidate,
): string {
  const cause = contrast.better
    ? contrast.row.cause(rival, job, candidate)
    : contrast.row.cause(candidate, job, rival);
  if (cause === null) return contrastClause(contrast);
  const whose = contrast.better ? `${rival.letter}: ` : '';
  return `${verbPhrase(contrast)} (${figures(contrast)}; ${whose}${cause})`;
}

function figures({ row, own, other }: Contrast): string {
  return `${row.text(own)} against ${row.text(other)}`;
}

function verbPhrase({ row, own, other, factor }: Contrast): string {
  const { verb, noun, measure } = row.speech;
  const [as, more, less] = DEGREES[measure];
  const grows = own > other;
  if (measure === 'warmth') {
    return `${verb} ${noun} ${inUnit(Math.abs(own - other), 'K', 2)} ${grows ? more : less}`;
  }
  if (Math.min(own, other) <= row.resolution.absolute && row.resolution.absolute > 0) {
    return own <= other
      ? `${verb} next to no ${bare(noun)}`
      : `${verb} ${noun} where the other has next to none`;
  }
  const { times, degree } = factorText(factor);
  if (verb === 'has')
    return `${verb} ${noun} ${times ? `${times} as ${as}` : `${degree} ${grows ? more : less}`}`;
  if (times === null) return `${verb} ${degree} ${grows ? 'more' : 'less'} ${noun}`;
  return `${verb} ${times} ${times.startsWith('a ') || times.startsWith('an ') ? 'of ' : ''}the ${noun}`;
}

function bare(noun: string): string {
  return noun.replace(/^an? /, '');
}
