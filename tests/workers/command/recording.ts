import { defaultParameters, type Parameters } from '../../../shared/core/parameters/table.ts';
import type { MoveLine } from '../../../shared/core/scene.ts';
import { Program } from '../../../workers/command/program.ts';
import { newProgramOutput, type ProgramOutput } from '../../../workers/command/setpoint.ts';

/** A power of two, so that sample times are exact and cycles can be compared bit by bit. */
export const TP = 2 ** -12;

export const MOVES: readonly MoveLine[] = [
  { to: 0.1, speed: 1, acceleration: 10, jerk: 500, dwell: 0.05 },
  { to: -0.05, speed: 0.2, acceleration: 4, jerk: 100, dwell: 0 },
];

export function parameters(changes: Partial<Parameters>): Parameters {
  return { ...defaultParameters(), ...changes };
}

/** The output at `count` samples from the reset. */
export function run(program: Program, count: number, from = 0): ProgramOutput[] {
  return Array.from({ length: count }, (_, n) => {
    const out = newProgramOutput();
    program.advance((from + n) * TP, out);
    return out;
  });
}

export const record = (changes: Partial<Parameters>, seconds: number, moves = MOVES) =>
  run(new Program(parameters(changes), moves), Math.round(seconds / TP));

/** Largest magnitude of a deviation over all outputs. */
export const worst = (outs: readonly ProgramOutput[], deviation: (out: ProgramOutput, n: number) => number) =>
  outs.reduce((max, out, n) => Math.max(max, Math.abs(deviation(out, n))), 0);

/** The first output in which two recordings differ, bit by bit, or null: comparing object by object takes a test seconds. */
export function firstDifference(
  some: readonly ProgramOutput[],
  others: readonly ProgramOutput[],
): string | null {
  if (some.length !== others.length) return `${some.length} and ${others.length} outputs`;
  for (const [n, one] of some.entries())
    for (const key of Object.keys(one) as (keyof ProgramOutput)[])
      if (!Object.is(one[key], others[n]?.[key]))
        return `${key} at ${n}: ${one[key]} and ${others[n]?.[key]}`;
  return null;
}
