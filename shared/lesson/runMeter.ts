import { valueAt } from '../core/at.ts';
import { CHANNEL_COUNT, CHANNEL_INDEX } from '../core/channels.ts';
import { LOOP_FIGURES, type LoopFigure } from '../figures/loopFigures.ts';
import { worstFigure } from '../figures/moveFigures.ts';
import type { LoopFigures } from '../protocol/analysis.ts';
import type { Frame, MoveFigures } from '../protocol/axis.ts';
import type { ChannelSource, Measure, ValueTaken } from './lesson.ts';

/** What the meter reads of a telemetry frame. */
type Telemetry = Pick<Frame, 'bins' | 'count'> & {
  readonly status: Pick<Frame['status'], 'finished' | 'trip'>;
};

/** Reads the measures of a step from what its run records: nothing is computed that the run has not measured already. */
export class RunMeter {
  readonly #measures: readonly Measure[];
  readonly #channels: ReadonlyMap<string, ChannelMeter>;
  readonly #moves: MoveFigures[] = [];
  #trip: number | null = null;

  constructor(measures: readonly Measure[]) {
    this.#measures = measures;
    this.#channels = new Map(
      measures.flatMap(({ id, source }) =>
        source.kind === 'channel' ? [[id, new ChannelMeter(source)] as const] : [],
      ),
    );
  }

  /** Takes in the next frame of the run. */
  take({ bins, count, status }: Telemetry): void {
    for (const channel of this.#channels.values()) channel.take(bins, count);
    this.#moves.push(...status.finished);
    this.#trip = status.trip?.time ?? null;
  }

  /** The figures so far by their names, SI; null where there is none. `loop` is that of the scene of the step. */
  values(loop: LoopFigures | null): Map<string, number | null> {
    return new Map(this.#measures.map((measure) => [measure.id, this.#value(measure, loop)]));
  }

  #value({ id, source }: Measure, loop: LoopFigures | null): number | null {
    switch (source.kind) {
      case 'channel':
        return this.#channels.get(id)?.value ?? null;
      case 'move':
        return source.take === 'worst'
          ? worstFigure(this.#moves, source.figure)
          : (this.#moves.at(-1)?.[source.figure] ?? null);
      case 'loop': {
        const figure: LoopFigure = LOOP_FIGURES[source.figure];
        return loop && (figure.of(loop)?.value ?? null);
      }
      case 'trip':
        return this.#trip;
    }
  }
}

const TIME = 2 * CHANNEL_INDEX.time;
const STRIDE = 2 * CHANNEL_COUNT;

/** Extremes of a channel in a part of the run. */
class ChannelMeter {
  readonly #source: ChannelSource;
  #low = Number.POSITIVE_INFINITY;
  #high = Number.NEGATIVE_INFINITY;
  #last = Number.NaN;

  constructor(source: ChannelSource) {
    this.#source = source;
  }

  take(bins: Float64Array, count: number): void {
    const { channel, from, to } = this.#source;
    const column = 2 * CHANNEL_INDEX[channel];
    for (let at = 0; at < count * STRIDE; at += STRIDE) {
      if (valueAt(bins, at + TIME) < from || valueAt(bins, at + TIME + 1) > to) continue;
      const [low, high] = [valueAt(bins, at + column), valueAt(bins, at + column + 1)];
      this.#low = Math.min(this.#low, low);
      this.#high = Math.max(this.#high, high);
      this.#last = (low + high) / 2;
    }
  }

  /** Null where nothing was recorded. */
  get value(): number | null {
    return this.#low <= this.#high ? taken(this.#source.take, this.#low, this.#high, this.#last) : null;
  }
}

function taken(take: ValueTaken, low: number, high: number, last: number): number {
  switch (take) {
    case 'highest':
      return high;
    case 'lowest':
      return low;
    case 'peak':
      return Math.max(-low, high);
    case 'peak to peak':
      return high - low;
    case 'last':
      return last;
  }
}
