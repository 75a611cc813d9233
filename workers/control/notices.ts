import { DRIVE_NOTICES, type DriveNotice } from '../../shared/protocol/axis.ts';

/** How long a notice stays after its cause was last seen, s of simulated time. */
const STAYS = 0.5;

/** What a drive would show as a warning: it goes on, but not as commanded. */
export class Notices {
  readonly #seen: Record<DriveNotice, number> = {
    current: Number.NEGATIVE_INFINITY,
    voltage: Number.NEGATIVE_INFINITY,
    overload: Number.NEGATIVE_INFINITY,
    heat: Number.NEGATIVE_INFINITY,
  };

  note(notice: DriveNotice, time: number): void {
    this.#seen[notice] = time;
  }

  /** The notices that hold at `time`. */
  at(time: number): DriveNotice[] {
    return DRIVE_NOTICES.filter((notice) => time - this.#seen[notice] < STAYS);
  }
}
