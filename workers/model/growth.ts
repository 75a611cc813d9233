import type { Parameters } from '../../shared/core/parameters/table.ts';

/*
 * What heat does to lengths, K above the room:
 *
 *   arm     l_t α_t (T_t − T_a)     growth between scale head and tool, m
 *   scale   α_s (T_t − T_a)         strain of the scale, which stays at the temperature of the table
 *
 * The strain of a screw depends on how its ends are held: shared/axis/screw.ts.
 */

export function armGrowth(p: Parameters, table: number): number {
  return p.toolArm * p.tableExpansion * (table - p.ambient);
}

export function scaleStrain(p: Parameters, table: number): number {
  return p.scaleExpansion * (table - p.ambient);
}
