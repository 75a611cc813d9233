import { at } from '../../shared/core/at.ts';
import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import type { TuningSession } from '../../shared/protocol/axis.ts';

/** Follows a session that the worker replays, so that the panel shows each change when it happens. */
export class Replay {
  readonly #session: TuningSession;
  readonly #runBefore: number;
  #next = 0;

  /** `runBefore` is the number of the run that the replay takes the place of. */
  constructor(session: TuningSession, runBefore: number) {
    this.#session = session;
    this.#runBefore = runBefore;
  }

  /** False for a frame of the run before. */
  hasBegun(run: number): boolean {
    return run > this.#runBefore;
  }

  /** The changes that were made since the last call, up to a tick; null: none. */
  changesUpTo(tick: number): ParameterChanges | null {
    const { events } = this.#session;
    let changes: ParameterChanges | undefined;
    for (; this.#next < events.length && at(events, this.#next).tick <= tick; this.#next++) {
      const event = at(events, this.#next);
      if (event.kind === 'change') changes = { ...changes, ...event.changes };
    }
    return changes ?? null;
  }

  hasEnded(tick: number): boolean {
    return tick >= this.#session.ticks;
  }
}
