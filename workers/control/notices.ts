/** How long a notice stays after its cause was last seen, s of simulated time. */
const STAYS = 0.5;

/** What a drive would show as a warning: it goes on, but not as commanded. */
const TEXTS = {
  current: 'The current limit is reached: the motor gives less force than the loop asks for.',
  voltage: 'The bus voltage is used up: the current cannot follow at this speed and acceleration.',
  overload: 'The overload time is used up: current is folded back to its continuous value.',
  heat: 'The winding is hot: current is folded back to protect it.',
} as const;

type Notice = keyof typeof TEXTS;
const NOTICES = Object.keys(TEXTS) as Notice[];

export class Notices {
  private readonly seen: Record<Notice, number> = {
    current: Number.NEGATIVE_INFINITY,
    voltage: Number.NEGATIVE_INFINITY,
    overload: Number.NEGATIVE_INFINITY,
    heat: Number.NEGATIVE_INFINITY,
  };

  note(notice: Notice, time: number): void {
    this.seen[notice] = time;
  }

  /** The notices that hold at `time`, in plain words. */
  texts(time: number): string[] {
    return NOTICES.filter((notice) => time - this.seen[notice] < STAYS).map((notice) => TEXTS[notice]);
  }
}
