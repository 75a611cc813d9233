import type { ParameterChanges } from '../core/parameters/table.ts';
import type { Scene } from '../core/scene.ts';
import type { SweptChips } from '../core/sweptChips.ts';

/** Why the drive stopped itself: at which simulated time, s, and which limit was passed, SI. See figures/tripText.ts. */
export type Trip =
  | {
      readonly kind: 'over-temperature' | 'over-speed';
      readonly time: number;
      readonly limit: number;
    }
  | {
      readonly kind: 'following error';
      readonly time: number;
      readonly limit: number;
      /** A hand had hold of the table. */
      readonly pulled: boolean;
    }
  | {
      readonly kind: 'over-travel';
      readonly time: number;
      readonly side: 'lower' | 'upper';
      readonly limit: number;
    }
  /** Frequency of the swings between the limits, Hz. */
  | { readonly kind: 'oscillation'; readonly time: number; readonly frequency: number }
  /** `undriven`: the drive was off, so that no gain can be the cause. */
  | { readonly kind: 'divergence'; readonly time: number; readonly undriven?: true };

/** What keeps a drive from doing as commanded; it goes on. See figures/tripText.ts. */
export const DRIVE_NOTICES = ['current', 'voltage', 'overload', 'heat'] as const;
export type DriveNotice = (typeof DRIVE_NOTICES)[number];
/** Beside those of the drive: the energy account does not balance. */
export type Notice = DriveNotice | 'audit';

/** What integrates the plant: with control of the error, or in fixed steps, which are faster. */
export const ENGINE_NAMES = ['odex', 'batch'] as const;
export type Engine = (typeof ENGINE_NAMES)[number];

/** Figures of one finished move or cycle of the program, SI, shares of 1; what each means stands in moveFigures.ts. */
export interface MoveFigures {
  readonly index: number;
  readonly duration: number;
  /** Of an unprofiled step; null for any other motion, and where it did not rise. */
  readonly riseTime: number | null;
  /** Null: not settled. */
  readonly settlingTime: number | null;
  /** Null for a motion without standstill at its end. */
  readonly overshoot: number | null;
  readonly peakError: number;
  readonly rmsError: number;
  /** Shares of the set speed; null without a part of constant speed. */
  readonly velocityRipplePeak: number | null;
  readonly velocityRippleRms: number | null;
  readonly peakForce: number;
  readonly rmsForce: number;
  readonly peakCurrent: number;
  readonly rmsCurrent: number;
  readonly currentHeadroom: number;
  readonly voltageHeadroom: number;
  readonly copperLoss: number;
}

export interface AxisStatus {
  readonly state: 'paused' | 'running' | 'tripped';
  /** Simulated time, s, and the number of current-loop periods behind it. */
  readonly time: number;
  readonly tick: number;
  /** Simulated seconds per second: asked for (Infinity: as fast as it goes) and achieved lately. */
  readonly timeScale: number;
  readonly achievedTimeScale: number;
  /** Wall-clock seconds that could not be kept up with since the last run command. */
  readonly lostTime: number;
  /** In slow motion, as asked for by `setSlowMotion`, for as long as something happens. */
  readonly isSlow: boolean;
  readonly trip: Trip | null;
  /** What integrates the plant. */
  readonly engine: Engine;
  readonly notices: readonly Notice[];
  /** What of the energy does not balance, as a share of what went through. */
  readonly energyResidual: number;
  readonly lastMove: MoveFigures | null;
  /** Left out where no chips lie on magnets. */
  readonly chips?: SweptChips;
  /** Those that have finished since the frame before, oldest first; at a fast pace several. */
  readonly finished: readonly MoveFigures[];
  /** Simulated time at which the move under way began, the one after `lastMove`, s; null before the first. */
  readonly moveStart: number | null;
}

/**
 * One telemetry frame, transferred. `bins` holds `count` records of `2 * CHANNEL_COUNT` doubles: minimum and maximum of each
 * channel over one position-loop period (minimum at 2c, maximum at 2c + 1, channels in the order of CHANNELS).
 * `now` holds the newest instantaneous value of each channel. The page returns the buffers with its next request.
 */
export interface Frame {
  /** Increases whenever the run was reset or a scene loaded: everything charted before belongs to another run. */
  readonly run: number;
  readonly bins: Float64Array<ArrayBuffer>;
  readonly count: number;
  readonly now: Float64Array<ArrayBuffer>;
  readonly status: AxisStatus;
}

/** What the page sends through the frame port, once per display refresh; the worker answers with one Frame. */
export interface FrameRequest {
  /** Spent buffers handed back for reuse. */
  readonly bins: Float64Array<ArrayBuffer> | null;
  readonly now: Float64Array<ArrayBuffer> | null;
  /** Where the page leads this run; left out, the run goes by its own clock, as it was ordered to. */
  readonly goal?: Goal | null;
}

/** The simulated time, s, that a run may reach at whatever pace, and no further; void for any other run than `run`. */
export interface Goal {
  readonly run: number;
  readonly time: number;
}

/** Something that was done to the running axis, at a position-loop sample. Replaying them replays the run exactly. */
export type AxisEvent =
  | { readonly tick: number; readonly kind: 'change'; readonly changes: ParameterChanges }
  | { readonly tick: number; readonly kind: 'hand'; readonly position: number | null }
  | { readonly tick: number; readonly kind: 'engine'; readonly engine: Engine };

/** A recorded tuning session: a scene, what was done to it and when, how long it ran. */
export interface TuningSession {
  readonly scene: Scene;
  /** What integrated the plant from the start on; odex where it is left out. */
  readonly engine?: Engine;
  readonly events: readonly AxisEvent[];
  readonly ticks: number;
}

/** The commands of the simulation worker. `Port` is the MessagePort of the side that compiles this. */
export interface AxisCommands<Port> {
  /** Takes a checked scene, resets to its start and pauses. */
  load(scene: Scene): void;
  run(): void;
  pause(): void;
  setTimeScale(timeScale: number): void;
  /** Whether the run slows down at events: arrivals with their settling, slips, and before a trip. */
  setSlowMotion(on: boolean): void;
  /** One current-loop period. */
  stepTick(): void;
  /** Runs until the present cycle of the program ends, then pauses. */
  runOneMove(): void;
  /** Back to the start of the scene as it is set now; clears a trip. */
  reset(): void;
  /** Checked changes; applied at the next position-loop sample, or with a reset if one of them needs a restart. */
  change(changes: ParameterChanges): void;
  /** A hand pulls the table towards a position through its spring; null lets go. */
  hand(position: number | null): void;
  /** What integrates the plant from the next position-loop sample on, and from the start of later runs. */
  useEngine(engine: Engine): void;
  /** Frames are asked for and answered through this port; load a scene first. */
  connect(frames: Port): void;
  recording(): TuningSession;
  /** Replays a recorded session from its start, then pauses. */
  replay(session: TuningSession): void;
}
