import { inUnit, ranged } from '../../../shared/core/format.ts';
import { type UnitSystem, unitIn } from '../../../shared/core/units.ts';
import type { SizingFigure, Standing } from '../../../shared/sizing/sizing.ts';
import { candidateLetterMark } from '../../sideBySide/candidateName.ts';
import type { CandidateState } from '../../studyState/state.ts';
import { element } from '../../ui/dom.ts';
import { withIndices } from '../../ui/markup.ts';

type Candidates = readonly Pick<CandidateState, 'letter' | 'title' | 'sizing'>[];

/** Shape and word: a standing is never told by colour alone. */
const STANDINGS: Readonly<Record<Standing, string>> = {
  good: '✓ within',
  close: '◐ close',
  beyond: '✕ beyond',
  plain: '',
};

/** What belongs together, in the order a person sizes an axis. */
const GROUPS: readonly (readonly [title: string, ids: readonly string[]])[] = [
  ['Motion and mass', ['speed', 'acceleration', 'dutyFactor', 'mass', 'inertiaMatch']],
  ['Force', ['friction', 'peakForce', 'peakUtilisation', 'rmsForce', 'continuousUtilisation']],
  ['Current and voltage', ['peakCurrent', 'currentHeadroom', 'rmsCurrent', 'voltage', 'voltageHeadroom']],
  ['Heat and energy', ['windingTemperature', 'energy']],
  ['Screw', ['peakTorque', 'rmsTorque', 'screwSpeed', 'screwLoad', 'growthPerKelvin']],
  ['Stiffness and encoder', ['stiffness', 'resolution']],
];

/** Figures of all candidates, one column each; a row opens to how it was worked out. `open` keeps the ids of those that are. */
export function sizingTable(candidates: Candidates, units: UnitSystem, open: Set<string>): HTMLElement {
  return element(
    'table',
    { class: 'candidate-table sizing-table' },
    element('caption', {}, 'Every figure, each with its calculation behind it'),
    element(
      'thead',
      {},
      element(
        'tr',
        {},
        element('th', { scope: 'col' }, 'Figure'),
        ...candidates.map(({ letter, title }) =>
          element('th', { scope: 'col' }, candidateLetterMark(letter), ` ${title}`),
        ),
      ),
    ),
    ...GROUPS.flatMap(([title, ids]) => {
      const rows = ids.flatMap((id) => figureRows(id, candidates, units, open));
      return rows.length > 0 ? [element('tbody', {}, groupRow(title, candidates.length + 1), ...rows)] : [];
    }),
  );
}

function groupRow(title: string, columns: number): HTMLElement {
  return element(
    'tr',
    { class: 'candidate-table-group' },
    element('th', { scope: 'rowgroup', colspan: columns }, title),
  );
}

interface CandidateFigure {
  readonly letter: string;
  readonly figure: SizingFigure;
}

function figureRows(id: string, candidates: Candidates, units: UnitSystem, open: Set<string>): HTMLElement[] {
  const figures = candidates.map(({ sizing }) => sizing.figures.find((each) => each.id === id) ?? null);
  const found = candidates.flatMap(({ letter }, k): CandidateFigure[] => {
    const figure = figures[k];
    return figure ? [{ letter, figure }] : [];
  });
  if (found.length === 0) return [];
  const labels = [...new Set(found.map(({ figure }) => figure.label))];
  const details = element(
    'tr',
    { class: 'sizing-how', id: `sizing-${id}`, hidden: !open.has(id) },
    element('td', { colspan: candidates.length + 1 }, ...calculations(found)),
  );
  const toggle = element(
    'button',
    {
      type: 'button',
      class: 'sizing-toggle',
      'aria-expanded': String(open.has(id)),
      'aria-controls': details.id,
      onclick: () => {
        const opens = details.hidden;
        details.hidden = !opens;
        toggle.setAttribute('aria-expanded', String(opens));
        if (opens) open.add(id);
        else open.delete(id);
      },
    },
    labels.join(' · '),
  );
  const cells = figures.map((figure) =>
    figure ? valueCell(figure, units) : element('td', { class: 'sizing-none' }, 'none'),
  );
  return [element('tr', {}, element('th', { scope: 'row' }, toggle), ...cells), details];
}

function valueCell({ value, unit, limit, standing }: SizingFigure, units: UnitSystem): HTMLElement {
  const text = (si: number) => (Number.isFinite(si) ? shown(si, unit, units) : 'no end');
  const cell = element(
    'td',
    { 'data-standing': standing },
    element('span', { class: 'sizing-value' }, text(value)),
  );
  if (limit) {
    cell.append(
      ' ',
      element('span', { class: 'sizing-standing' }, STANDINGS[standing]),
      element('span', { class: 'sizing-limit' }, `at ${limit.side} ${text(limit.value)}`),
    );
  }
  return cell;
}

function shown(value: number, unit: SizingFigure['unit'], units: UnitSystem): string {
  const asked = unitIn(units, unit);
  if (value === 0) return `0 ${asked}`;
  return asked === unit ? ranged(value, unit) : inUnit(value, asked);
}

/** Formula, numbers of each candidate, and note; candidates that share formula and note stand together. */
function calculations(found: readonly CandidateFigure[]): HTMLElement[] {
  const groups = new Map<string, CandidateFigure[]>();
  for (const each of found) {
    const key = `${each.figure.formula}\n${each.figure.note}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()].map((group) => {
    const { formula, note } = group[0]!.figure;
    return element(
      'div',
      { class: 'sizing-calculation' },
      withSubscripts('p', 'sizing-formula', formula),
      element(
        'dl',
        {},
        ...group.flatMap(({ letter, figure }) => [
          element('dt', {}, candidateLetterMark(letter)),
          withSubscripts('dd', '', figure.numbers),
        ]),
      ),
      withSubscripts('p', 'sizing-note', note),
    );
  });
}

function withSubscripts(tag: 'p' | 'dd', name: string, text: string): HTMLElement {
  const made = element(tag, { class: name === '' ? undefined : name });
  made.innerHTML = withIndices(text).text;
  return made;
}
