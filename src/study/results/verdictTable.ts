import { ranged } from '../../../shared/core/format.ts';
import { type UnitSystem, unitIn } from '../../../shared/core/units.ts';
import {
  CELL_TEXT,
  type JudgedCandidate,
  type Judgement,
  VERDICT_GROUPS,
  type VerdictCell,
  type VerdictGroup,
  type VerdictRow,
} from '../../../shared/verdict/judgement.ts';
import { candidateLetterMark } from '../../sideBySide/candidateName.ts';
import { button, element } from '../../ui/dom.ts';

/** Every figure of every drive. What is best and what fails is said by word and shape; a row opens to its definition. */
export function verdictTable(
  { rows }: Judgement,
  candidates: readonly JudgedCandidate[],
  units: UnitSystem,
  toBench: (candidate: JudgedCandidate) => () => void,
): HTMLElement {
  const columns = candidates.length + 2;
  const groups = (Object.keys(VERDICT_GROUPS) as VerdictGroup[]).map((group) =>
    element(
      'tbody',
      {},
      element(
        'tr',
        { class: 'candidate-table-group' },
        element('th', { colspan: columns, scope: 'rowgroup' }, VERDICT_GROUPS[group]),
      ),
      ...rows.filter((row) => row.group === group).map((row) => tableRow(row, units)),
    ),
  );
  return element(
    'section',
    { class: 'candidate-table-frame', tabindex: 0, 'aria-label': 'Figures of the drives' },
    element('table', { class: 'candidate-table verdict-table' }, head(candidates, toBench), ...groups),
  );
}

function head(
  candidates: readonly JudgedCandidate[],
  toBench: (candidate: JudgedCandidate) => () => void,
): HTMLElement {
  return element(
    'thead',
    {},
    element(
      'tr',
      {},
      element('th', { scope: 'col' }, 'Figure'),
      element('th', { scope: 'col' }, 'The job asks'),
      ...candidates.map((candidate) =>
        element(
          'th',
          { scope: 'col' },
          candidateLetterMark(candidate.letter),
          ` ${candidate.title} `,
          button('To the bench', toBench(candidate), { 'aria-label': `To the bench: ${candidate.letter}` }),
        ),
      ),
    ),
  );
}

function tableRow(row: VerdictRow, units: UnitSystem): HTMLElement {
  const { label, definition, better, cells } = row;
  return element(
    'tr',
    {},
    element(
      'th',
      { scope: 'row' },
      element(
        'details',
        {},
        element('summary', {}, label),
        element('p', {}, `${definition} ${better === 'less' ? 'Less' : 'More'} is better.`),
      ),
    ),
    element('td', { class: 'verdict-asked' }, askedIn(units, row) ?? ''),
    ...cells.map((cell) =>
      tableCell({ ...cell, reason: reasonIn(units, row, cell) }, textIn(units, row, cell)),
    ),
  );
}

/** The figure in the units of the page, and its limit; what else is said of it in words is metric. */
function textIn(units: UnitSystem, { unit }: VerdictRow, { value, text }: VerdictCell): string {
  const shown = unitIn(units, unit);
  return value === null || shown === unit ? text : ranged(value, shown);
}

function askedIn(units: UnitSystem, { unit, asked, limit }: VerdictRow): string | null {
  const shown = unitIn(units, unit);
  return limit === undefined || shown === unit ? asked : `at most ${ranged(limit, shown)}`;
}

function reasonIn(
  units: UnitSystem,
  { unit, limit }: VerdictRow,
  { value, reason }: VerdictCell,
): string | null {
  const shown = unitIn(units, unit);
  if (limit === undefined || value === null || reason === null || shown === unit) return reason;
  const above = ranged(value, shown) === ranged(limit, shown) ? 'just above' : 'above';
  return `${above} ${ranged(limit, shown)}`;
}

function tableCell({ cause, mark, fails, reason }: VerdictCell, text: string): HTMLElement {
  const cell = element('td', {}, element('span', { class: 'verdict-value' }, text));
  if (mark !== null) cell.append(' ', badge(mark));
  if (fails) cell.append(' ', badge('fails'));
  if (reason !== null) cell.append(element('p', { class: 'verdict-reason' }, reason));
  if (cause !== null) cell.append(element('p', { class: 'verdict-cause' }, cause));
  return cell;
}

/** A shape beside each word, so that a mark is seen from afar. */
const SHAPES = { best: '●', tie: '○', fails: '✕' } as const;

function badge(kind: keyof typeof CELL_TEXT): HTMLElement {
  return element('span', { class: 'verdict-mark', 'data-mark': kind }, `${SHAPES[kind]} ${CELL_TEXT[kind]}`);
}
