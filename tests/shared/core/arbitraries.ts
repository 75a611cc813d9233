import fc from 'fast-check';
import { CROSS_RULES } from '../../../shared/core/crossChecks.ts';
import type { NumberRow, Row, RowValue } from '../../../shared/core/parameters/row.ts';
import {
  defaultParameters,
  PARAMETER_NAMES,
  type Parameters,
  parameterRow,
} from '../../../shared/core/parameters/table.ts';
import { isPrintable } from '../../../shared/core/problem.ts';
import { DRIVE_TYPES, type MoveLine, type Scene, type Shelf } from '../../../shared/core/scene.ts';
import { MOVE_ROWS } from '../../../shared/motion/moves.ts';

/**
 * Checks a property of many drawn examples, the same in every run. An example that fails is made as small as it can be,
 * which here means as near to the defaults, before it is shown.
 */
export function always<T>(examples: fc.Arbitrary<T>, runs: number, property: (example: T) => void): void {
  fc.assert(fc.property(examples, property), { numRuns: runs, seed: 20 });
}

/** Where there is nothing: what does not depend on the shelf reads the same on it. */
export const BARE_SHELF: Shelf = { presets: {}, scenes: [] };

const STEPS = 2 ** 30;

/** A number from 0 to 1, all of them equally likely. */
export const share = fc.integer({ min: 0, max: STEPS }).map((step) => step / STEPS);

/** A legal number of a row: its default, its ends and zero more often than chance has it. */
export function anyNumber(row: NumberRow): fc.Arbitrary<number> {
  const { min, max, scale, zero, integer } = row;
  const within = (at: number) => {
    const value = scale === 'log' ? min * (max / min) ** at : min + at * (max - min);
    return Math.min(Math.max(integer ? Math.round(value) : value, min), max);
  };
  return fc.oneof(
    { withCrossShrink: true },
    { arbitrary: fc.constantFrom(row.default, zero ? 0 : min, max), weight: 1 },
    { arbitrary: share.map(within), weight: 3 },
  );
}

/** A legal value of a row. */
export function anyValue(row: Row): fc.Arbitrary<RowValue> {
  if (row.kind === 'switch') return fc.boolean();
  return row.kind === 'choice' ? fc.constantFrom(...row.options) : anyNumber(row);
}

/** One line of text with whatever a person may type or paste. */
export function anyText(minLength: number, maxLength: number): fc.Arbitrary<string> {
  return fc
    .string({ unit: 'grapheme', minLength, maxLength })
    .filter((text) => isPrintable(text) && text.length <= maxLength && text.trim().length >= minLength);
}

/** Parameters from all over their ranges that do not contradict each other: what would is left at its default. */
export const anyParameters: fc.Arbitrary<Parameters> = fc
  .tuple(...PARAMETER_NAMES.map((name) => anyValue(parameterRow(name))))
  .map((values) => {
    const parameters: Record<string, RowValue> & Parameters = defaultParameters();
    for (const [index, name] of PARAMETER_NAMES.entries()) {
      const before = parameters[name];
      Object.assign(parameters, { [name]: values[index] });
      if (CROSS_RULES.some(({ fields, broken }) => fields.includes(name) && broken(parameters)))
        Object.assign(parameters, { [name]: before });
    }
    return parameters;
  });

const anyMove = fc.record({
  to: share,
  speed: anyNumber(MOVE_ROWS.speed),
  acceleration: anyNumber(MOVE_ROWS.acceleration),
  jerk: anyNumber(MOVE_ROWS.jerk),
  dwell: anyNumber(MOVE_ROWS.dwell),
});

function inTravel({ to, ...limits }: MoveLine, { travelMin, travelMax }: Parameters): MoveLine {
  const position = travelMin + to * (travelMax - travelMin);
  return { ...limits, to: Math.min(Math.max(position, MOVE_ROWS.to.min), MOVE_ROWS.to.max) };
}

/** A legal scene of its own. */
export const anyScene: fc.Arbitrary<Scene> = fc
  .record({
    title: anyText(1, 60),
    lookFor: anyText(0, 60),
    driveType: fc.constantFrom(...DRIVE_TYPES),
    parameters: anyParameters,
    moves: fc.array(anyMove, { maxLength: 3 }),
  })
  .map(({ moves, ...scene }) => ({
    id: null,
    preset: null,
    ...scene,
    moves: moves.map((move) => inTravel(move, scene.parameters)),
  }));
