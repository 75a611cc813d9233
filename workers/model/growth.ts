import type { Parameters } from '../../shared/core/parameters/table.ts';

/*
 * What heat does to lengths, K above the room:
 *
 *   arm     l_t α_t (T_t − T_a)     growth between scale head and tool, m
 *   scale   α_s (T_t − T_a)         strain of the scale, which stays at the temperature of the table
 *   screw   α_k (T_s − T_a)         strain of the screw, from its fixed bearing on
 */

export function armGrowth(p: Parameters, table: number): number {
  return p.toolArm * p.tableExpansion * (table - p.ambient);
}

export function scaleStrain(p: Parameters, table: number): number {
  return p.scaleExpansion * (table - p.ambient);
}

export function screwStrain(p: Parameters, screw: number): number {
  return p.screwExpansion * (screw - p.ambient);
}
