import { parameterLabel, parameterText } from '../core/parameters/labels.ts';
import { PARAMETER_NAMES, type ParameterName, type Parameters } from '../core/parameters/table.ts';
import type { MoveFigures } from '../protocol/axis.ts';
import {
  MOVE_FIGURE_NAMES,
  MOVE_FIGURES,
  type MoveFigure,
  type MoveFigureName,
  moveFigureText,
} from './moveFigures.ts';

/** How a value stands to what it was; a difference that cannot be told, or is not read, is none. */
export type Verdict = 'better' | 'worse' | 'same' | 'changed';

/** One line of a table of differences. */
export interface Difference {
  readonly label: string;
  readonly before: string;
  readonly after: string;
  /** Of the value before, 0.1 for 10 % more; null where there is no such share. */
  readonly change: number | null;
  readonly verdict: Verdict;
}

/** Every figure of two moves. `p` of the later one says what can be told apart. */
export function compareMoves(before: MoveFigures, after: MoveFigures, p: Parameters): Difference[] {
  return compareFigures(MOVE_FIGURE_NAMES, before, after, p);
}

/** Some figures of what need not be whole moves. */
export function compareFigures<N extends MoveFigureName>(
  names: readonly N[],
  before: Pick<MoveFigures, N>,
  after: Pick<MoveFigures, N>,
  p: Parameters,
): Difference[] {
  return names.map((name) => {
    const figure: MoveFigure = MOVE_FIGURES[name];
    return difference(
      figure.label,
      moveFigureText(name, before[name]),
      moveFigureText(name, after[name]),
      before[name],
      after[name],
      { better: figure.better, absentIs: figure.absentIs, resolution: resolutionOf(figure, p) },
    );
  });
}

/** A share below which a difference is neither better nor worse: nobody would retune for it. */
const NOTABLE = 0.01;

interface ParameterDifference extends Difference {
  readonly name: ParameterName;
}

/** The parameters that are set otherwise, in the order of the table. */
export function compareParameters(before: Parameters, after: Parameters): ParameterDifference[] {
  return PARAMETER_NAMES.filter((name) => before[name] !== after[name]).map((name) => {
    const [was, is] = [before[name], after[name]];
    return {
      name,
      label: parameterLabel(name),
      before: parameterText(name, was),
      after: parameterText(name, is),
      change: typeof was === 'number' && typeof is === 'number' ? relativeChange(was, is) : null,
      verdict: 'changed',
    };
  });
}

interface Reading {
  readonly better: 'less' | 'more' | 'neither';
  readonly absentIs: 'best' | 'worst' | 'nothing';
  /** SI: what is nearer together than this cannot be told apart. */
  readonly resolution: number;
}

function difference(
  label: string,
  before: string,
  after: string,
  was: number | null,
  is: number | null,
  reading: Reading,
): Difference {
  const verdict = before === after ? 'same' : verdictOn(was, is, reading);
  return { label, before, after, change: relativeChange(was, is), verdict };
}

/** How a value stands to what it was, where it is read so. */
export function verdictOn(
  was: number | null,
  is: number | null,
  { better, absentIs, resolution }: Reading,
): Verdict {
  if (was === null || is === null) {
    if (was === is) return 'same';
    if (absentIs === 'nothing') return 'changed';
    return (is === null) === (absentIs === 'best') ? 'better' : 'worse';
  }
  const far = NOTABLE * Math.max(Math.abs(is), Math.abs(was));
  if (Math.abs(is - was) <= Math.max(resolution, far)) return 'same';
  if (better === 'neither') return 'changed';
  return is > was === (better === 'more') ? 'better' : 'worse';
}

function relativeChange(was: number | null, is: number | null): number | null {
  return was === null || is === null || was === 0 ? null : (is - was) / Math.abs(was);
}

function resolutionOf({ resolution }: MoveFigure, p: Parameters): number {
  switch (resolution) {
    case 'period':
      return p.positionDivider / p.currentRate;
    case 'count':
      return p.encoderResolution;
    case 'digits':
      return 0;
  }
}
