import { crossChecks } from '../../../shared/core/crossChecks.ts';
import { defaultParameters, PARAMETER_NAMES, parameterRow } from '../../../shared/core/parameters/table.ts';
import { DRIVE_TYPES, type MoveLine, type Scene, type Shelf } from '../../../shared/core/scene.ts';
import { MOVE_ENTRIES, MOVE_ROWS } from '../../../shared/motion/moves.ts';
import { drawNumber, drawValue } from './drawValue.ts';

/** Seeded random numbers in [0, 1): mulberry32 (Tommy Ettinger, public domain; from memory). */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Where there is nothing: what does not depend on the shelf reads the same on it. */
export const BARE_SHELF: Shelf = { presets: {}, scenes: [] };

/** A scene of its own whose parameters are drawn from all over their ranges and do not contradict each other. */
export function legalScene(random: () => number): Scene {
  let parameters = defaultParameters();
  for (const name of PARAMETER_NAMES) {
    const changed = { ...parameters, [name]: drawValue(parameterRow(name), random) };
    if (crossChecks(changed).length === 0) parameters = changed;
  }
  const inside = () => parameters.travelMin + random() * (parameters.travelMax - parameters.travelMin);
  const drawMove = () =>
    ({
      ...Object.fromEntries(MOVE_ENTRIES.map((name) => [name, drawNumber(MOVE_ROWS[name], random)])),
      to: Math.min(Math.max(inside(), MOVE_ROWS.to.min), MOVE_ROWS.to.max),
    }) as MoveLine;
  return {
    id: null,
    preset: null,
    title: `Scene ${Math.floor(random() * 1e6)} with 10 % & more = "ä µ 磁 😀" #?/+`,
    lookFor: random() < 0.3 ? '' : 'What remains; (almost) nothing: 5 ± 1 nm.',
    driveType: DRIVE_TYPES[Math.floor(random() * DRIVE_TYPES.length)]!,
    parameters,
    moves: Array.from({ length: Math.floor(random() * 4) }, drawMove),
  };
}
