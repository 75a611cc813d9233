import { inUnit, ranged } from '../core/format.ts';
import { siUnit, type Unit } from '../core/units.ts';
import type { LoopFigures } from '../protocol/analysis.ts';
import type { PretuneGoal } from '../protocol/pretune.ts';
import type { LoopOfSheet } from './marginRows.ts';
import { type SheetRow, type SheetSection, setRow } from './row.ts';

/** The goal of the pretuning that the gains come from. */
export interface AskedOfSheet {
  readonly goal: PretuneGoal;
  /** Whether a value that it set has been changed since. */
  readonly isChanged: boolean;
}

interface Asked {
  readonly label: string;
  readonly symbol: string;
  readonly unit: Unit;
  readonly value: number;
  /** The same of an analysed loop; null where the loop has no such margin, and none is needed. */
  readonly reached?: (figures: LoopFigures) => number | null;
  readonly side: 'at least' | 'at most';
}

/** What pretuning was asked for, and what the loop has of it, at the worse of its operating points. */
export function askedSection({ goal, isChanged }: AskedOfSheet, loops: readonly LoopOfSheet[]): SheetSection {
  return {
    id: 'asked',
    title: 'Asked for at pretuning',
    text: [
      isChanged
        ? 'Gains were changed after pretuning. The values reached are those of the present gains.'
        : 'The gains are as pretuning set them.',
    ],
    rows: askedOf(goal).flatMap((asked) => rows(asked, loops)),
  };
}

function rows(asked: Asked, loops: readonly LoopOfSheet[]): SheetRow[] {
  const { label, symbol, unit, value, side, reached } = asked;
  const wanted: SheetRow = {
    ...setRow(`${label}, asked for`, symbol, value, siUnit(unit)),
    text: reached ? `${side} ${inUnit(value, unit)}` : ranged(value, unit),
  };
  if (!reached || loops.length === 0) return [wanted];
  const found = loops.map(({ figures }) => (figures.stable ? reached(figures) : Number.NaN));
  if (found.some(Number.isNaN))
    return [wanted, { ...setRow(`${label}, reached`, symbol, 'unstable'), how: HOW }];
  const known = found.filter((each) => each !== null);
  if (known.length === 0) return [wanted, { ...setRow(`${label}, reached`, symbol, 'unlimited'), how: HOW }];
  const worst = side === 'at most' ? Math.max(...known) : Math.min(...known);
  const missed = side === 'at most' ? worst > value * SLACK : worst < value / SLACK;
  return [
    wanted,
    {
      ...setRow(`${label}, reached`, symbol, worst, siUnit(unit)),
      text: `${inUnit(worst, unit)}${missed ? ', MISSED' : ''}`,
      how: HOW,
    },
  ];
}

const HOW = 'The worst of the operating points on this sheet.';
/** Pretuning rounds its gains to two digits. */
const SLACK = 1.02;

function askedOf(goal: PretuneGoal): Asked[] {
  switch (goal.kind) {
    case 'peak sensitivity':
      return [sensitivity(goal.limit)];
    case 'margins':
      return [
        {
          label: 'Phase margin',
          symbol: '',
          unit: '°',
          value: goal.phase,
          side: 'at least',
          reached: ({ phaseMargin }) => phaseMargin?.value ?? null,
        },
        {
          label: 'Gain margin, factor',
          symbol: '',
          unit: '',
          value: goal.gain,
          side: 'at least',
          reached: ({ gainMargin }) => gainMargin?.value ?? null,
        },
      ];
    case 'settling':
      return [
        sensitivity(goal.sensitivityLimit),
        {
          label: 'Window to settle into, ±',
          symbol: 'w',
          unit: 'm',
          value: goal.window,
          side: 'at most',
        },
      ];
  }
}

function sensitivity(limit: number): Asked {
  return {
    label: 'Peak sensitivity',
    symbol: 'M_S',
    unit: '',
    value: limit,
    side: 'at most',
    reached: ({ modulusMargin: { value } }) => 1 / value,
  };
}
