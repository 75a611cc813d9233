import type { CoggingTable } from './coggingTable.ts';
import type { LearnedMove } from './learnedMove.ts';
import type { Parameters } from './parameters/table.ts';

/** One line of a move list: go to a position under limits, then stand still. SI. */
export interface MoveLine {
  readonly to: number;
  readonly speed: number;
  readonly acceleration: number;
  readonly jerk: number;
  readonly dwell: number;
  /** Of the process against this move while it lasts, N, besides the process force of the parameters; none where it is left out. */
  readonly force?: number;
}

/** How a drive looks on the stage. It selects geometry and nothing else: the physics is in the parameters. */
export type DriveType = keyof typeof DRIVE_TYPE_LABELS;

/** Every type, and what the drives of it are called together. */
export const DRIVE_TYPE_LABELS = {
  tubular: 'Tubular motors',
  'u-channel': 'U-channel motors',
  flat: 'Flat motors',
  screw: 'Screw drives',
} as const;

export const DRIVE_TYPES = Object.keys(DRIVE_TYPE_LABELS) as readonly DriveType[];

/** A situation: what is on the bench, how it is set, and what to look for. Complete and checked. */
export interface Scene {
  /** The scene of the shelf that it is, or was before it was changed; null for a scene of one's own. */
  readonly id: string | null;
  /** The preset that its drive is based on, whatever was changed since; null for a drive of one's own. */
  readonly preset: string | null;
  readonly title: string;
  /** One sentence: what to look for. */
  readonly lookFor: string;
  readonly driveType: DriveType;
  readonly parameters: Parameters;
  /** Used by the program 'list'. */
  readonly moves: readonly MoveLine[];
  /** Used by the cogging compensation; without it there is nothing to add. */
  readonly coggingTable?: CoggingTable;
  /** Force that was learned for the repeated move; not kept in files or links. */
  readonly learnedMove?: LearnedMove;
}

/** A drive of the shelf: the parameters that make it this drive, and how it looks. */
export interface Preset {
  readonly title: string;
  readonly driveType: DriveType;
  /** Crossover of the position loop that its mechanics usually allow, Hz. */
  readonly crossover: number;
  readonly parameters: Partial<Parameters>;
}

/** The drives that are offered, by id. */
export type Presets = Readonly<Record<string, Preset>>;

/** What the product ships: drives and scenes, both known by their ids and by nothing else. */
export interface Shelf {
  readonly presets: Presets;
  /** In the order they are offered. */
  readonly scenes: readonly Scene[];
}
