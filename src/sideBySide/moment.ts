/** Which moment of the common time is looked at, s: the present, or one of the last seconds. */
export class Moment {
  #heldAt: number | null = null;

  get live(): boolean {
    return this.#heldAt === null;
  }

  /** `latest`: the present. */
  at(latest: number): number {
    return this.#heldAt ?? latest;
  }

  /** Looks at a moment from `oldest` to `latest`. */
  hold(time: number, oldest: number, latest: number): void {
    this.#heldAt = Math.min(Math.max(time, oldest), latest);
  }

  /** Goes on, or back, by some seconds; past the latest it looks at the present again. */
  step(by: number, oldest: number, latest: number): void {
    const time = this.at(latest) + by;
    if (time >= latest) this.followLive();
    else this.hold(time, oldest, latest);
  }

  followLive(): void {
    this.#heldAt = null;
  }
}
