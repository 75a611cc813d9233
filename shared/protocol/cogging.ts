import type { CoggingTable } from '../core/coggingTable.ts';
import type { Scene } from '../core/scene.ts';
import type { Trip } from './axis.ts';

/** What the slow scan came to. */
export type LearnedCogging =
  | {
      readonly table: CoggingTable;
      /** Half of what the two directions differ by on average: friction at the speed of the scan, N. */
      readonly friction: number;
      /** Whether the forces are too small to be worth compensating. */
      readonly nothingToGain: boolean;
    }
  | { readonly trip: Trip }
  | { readonly refused: string };

/** The commands of the cogging worker. */
export interface CoggingCommands {
  /** Scans the reach of the program forwards and backwards on a copy of the machine. */
  learn(scene: Scene): LearnedCogging;
}
