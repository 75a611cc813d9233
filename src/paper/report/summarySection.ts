import { at } from '../../../shared/core/at.ts';
import { jobSentence } from '../../../shared/study/jobSentence.ts';
import { confidenceSentence, rangesText } from '../../../shared/verdict/confidence/text.ts';
import { type DecisiveRow, decisiveRows } from '../../../shared/verdict/decisive.ts';
import { dropSentence } from '../../../shared/verdict/drop.ts';
import type { Verdict } from '../../../shared/verdict/judgement.ts';
import type { SimulatedCandidate } from '../../studyState/simulatedCandidate.ts';
import { CAUTIONS } from '../../ui/cautions.ts';
import { type Markup, markup, withIndices } from '../../ui/markup.ts';
import { list } from '../paperParts.ts';
import { pictureOf } from './picture.ts';
import type { ReportInput } from './reportInput.ts';

const REASONS = 3;
const CHANGES = 3;
/** So many characters of changes fit the page beside everything else. */
const CHANGES_LENGTH = 560;

const TO_FILL_IN = ['Customer', 'Project', 'Revision', 'Checked by, date'];

/** One page to hand over: job, choice, the reasons in bars and sentences, what would change it, cautions. The rest of the report shows why. */
export function summarySection(
  { study, units, verdict, confidence, pictures }: ReportInput,
  candidates: readonly SimulatedCandidate[],
): Markup {
  const letters = candidates.map(({ letter }) => letter);
  const changes = whatFits([
    // How probable the choice is says more than the worst case, which is told where that is not known.
    ...(confidence
      ? [confidenceSentence(confidence, true)]
      : verdict.robustness === ''
        ? []
        : [verdict.robustness]),
    ...verdict.purchases,
    ...verdict.flips.map(({ sentence }) => sentence),
  ]);
  return markup`<section class="summary"><h2>Summary</h2>
<div class="summary-head"><div><table class="handed"><tbody>${TO_FILL_IN.map((text) => markup`<tr><th scope="row">${text}</th><td></td></tr>`)}</tbody></table>
<p>${jobSentence(study.job, units)}</p></div>
${pictureOf(pictures.stage, 'The candidates on the stage')}</div>
<p class="answer">${withIndices(verdict.choice)}</p>
<div class="bars">${decisiveRows(verdict, letters).map((row) => bars(row, letters))}</div>
${list(reasonsOf(verdict, candidates))}
<h3>What would change it</h3>
${changes.length > 0 ? list(changes) : markup`<p>Nothing near: no tested change of up to about a factor of two.</p>`}
<p class="note">${confidence ? `Ranges of the jobs drawn: ${rangesText(confidence.ranges)}. ` : ''}${dropSentence(candidates)} ${CAUTIONS.opening} Strong magnets, pinch, axes that drop, a live bus and runaway loops are dangers; the cautions at the end of this report apply. ${CAUTIONS.closing}</p></section>`;
}

/** The first few of what would change the choice, as many as the page has room for; one at least. */
function whatFits(changes: readonly string[]): string[] {
  const fitting: string[] = [];
  for (const change of changes.slice(0, CHANGES)) {
    if (fitting.length > 0 && [...fitting, change].join('').length > CHANGES_LENGTH) break;
    fitting.push(change);
  }
  return fitting;
}

/** Why not the others: the first that each falls short of, since a page has no room for all, then what sets those apart that do the job. */
function reasonsOf({ sentences, shortfalls }: Verdict, candidates: readonly SimulatedCandidate[]): string[] {
  const failing = candidates.flatMap(({ letter, title }, k) => {
    const [first, ...others] = at(shortfalls, k);
    if (first === undefined) return [];
    const more =
      others.length > 0
        ? ` The report gives ${others.length} more ${others.length === 1 ? 'reason' : 'reasons'}.`
        : '';
    return [{ letter, text: `${letter} (${title}) does not do the job. ${first}${more}` }];
  });
  // Nobody needs to be told how a drive that is out compares.
  const isOfFailing = (each: string) =>
    failing.some(({ letter }) => each.startsWith(`${letter} (`) || each.startsWith(`Against ${letter} (`));
  const apart = sentences.filter((each) => !isOfFailing(each));
  return [...failing.map(({ text }) => text), ...apart.slice(0, Math.max(REASONS - failing.length, 1))].slice(
    0,
    REASONS,
  );
}

/** A figure of all candidates as bars of one scale. */
function bars({ row: { label, cells }, sentence }: DecisiveRow, letters: readonly string[]): Markup {
  const largest = Math.max(...cells.map(({ value }) => value ?? 0));
  const rows = letters.map((letter, k) => {
    const { value, text, fails } = at(cells, k);
    const length = value === null || !(largest > 0) ? 0 : (100 * value) / largest;
    return markup`<tr><th scope="row">${letter}</th><td class="bar"><svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true"><rect width="${length.toFixed(1)}" height="8"/></svg></td><td class="value">${text}${fails ? ' fails' : ''}</td></tr>`;
  });
  return markup`<div><table><caption>${label}</caption><tbody>${rows}</tbody></table><p>${sentence}</p></div>`;
}
