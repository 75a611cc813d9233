import { at } from '../core/at.ts';
import { presetById } from '../core/preset.ts';
import type { Presets } from '../core/scene.ts';
import type { CandidateChoice } from '../study/candidate.ts';

/** Forces that differ by less are of one class. */
const SAME_CLASS = 0.1;

/** Continuous force of all motors of a candidate, N: what its class is told by. */
export function classForce({ preset, motorCount, own }: CandidateChoice, presets: Presets): number {
  return motorCount * (own.continuousForce ?? presetById(preset, presets).parameters.continuousForce ?? 0);
}

/** How far a force is from another, as a factor of at least 1. */
export function apart(a: number, b: number): number {
  return Math.max(a, b) / Math.min(a, b);
}

export function isSameClass(a: number, b: number): boolean {
  return apart(a, b) <= 1 + SAME_CLASS;
}

/** The force in the middle of several, N, and the places of those that are not of its class. */
export function classOf(forces: readonly number[]): {
  readonly middle: number;
  readonly odd: readonly number[];
} {
  const middle = [...forces].sort((a, b) => a - b)[Math.floor((forces.length - 1) / 2)] ?? 0;
  return { middle, odd: [...forces.keys()].filter((k) => !isSameClass(at(forces, k), middle)) };
}
