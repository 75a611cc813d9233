import { GRAVITY } from '../../shared/axis/gravity.ts';
import { loadSideMass } from '../../shared/core/movedMass.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { baseAt, CURRENTS, E_IN, E_OUT, modesAt, V1, V2, X1, X2, Z } from '../model/state.ts';

/** Tolerance of one solver step relative to the scale of each state. */
const RELATIVE = 1e-9;

/**
 * Error tolerances of one tick, per state: 1e-9 of the natural scale of each. Positions get an absolute 1e-12 m (a thousandth of
 * the finest encoder count), because a relative one would follow the distance from an arbitrary zero.
 */
export function tolerances(p: Parameters, size: number): { relative: number[]; absolute: number[] } {
  const relative = new Array<number>(size).fill(RELATIVE);
  const absolute = new Array<number>(size).fill(RELATIVE);
  relative[X1] = 0;
  relative[X2] = 0;
  absolute[X1] = 1e-12;
  absolute[X2] = 1e-12;
  absolute[V1] = RELATIVE;
  absolute[V2] = RELATIVE;
  const normal = loadSideMass(p) * GRAVITY + p.attraction * p.motorCount;
  const breakaway = Math.max(p.stictionCoefficient * normal + p.sealStiction, 1e-3);
  absolute[Z] = (1e-6 * breakaway) / p.bristleStiffness;
  for (let k = E_IN; k <= E_OUT; k++) absolute[k] = 1e-10;
  for (let k = CURRENTS; k < baseAt(p.motorCount); k++) absolute[k] = RELATIVE * p.peakCurrent;
  if (p.base) absolute[baseAt(p.motorCount)] = 1e-12;
  for (let k = modesAt(p.motorCount, p.base); k < size; k += 2) {
    relative[k] = 0;
    absolute[k] = 1e-12;
  }
  return { relative, absolute };
}
