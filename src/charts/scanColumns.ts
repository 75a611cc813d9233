import { ColumnBuffer, type ColumnSource, type Span } from '../plot/strip/columnBuffer.ts';

/** After the speed of a scan is reached the loop still settles for so long, s. Common practice, no source. */
const RUN_IN = 0.3;
const SAME = 1e-6;

/** Of a scan: the columns at its constant speed, once the axis has run in. Run-up and return tell nothing of it. */
export class ScanColumns {
  readonly #speed = new ColumnBuffer('setSpeed');

  /** One for each column of the window that counts; null where none does. `scanSpeed` in m/s. */
  read(source: ColumnSource, view: Span, count: number, scanSpeed: number): Uint8Array | null {
    this.#speed.read(source, view, count);
    return columnsAtSpeed(this.#speed, scanSpeed, Math.ceil((RUN_IN * count) / (view.to - view.from)));
  }
}

/** `runIn`: so many columns at this speed come before the first that counts. */
export function columnsAtSpeed(
  { lows, highs }: Pick<ColumnBuffer, 'lows' | 'highs'>,
  speed: number,
  runIn: number,
): Uint8Array | null {
  const isAt = (value: number | undefined) => Math.abs(Math.abs(value ?? Number.NaN) - speed) < SAME * speed;
  const counts = new Uint8Array(lows.length);
  let steady = 0;
  let found = false;
  for (let column = 0; column < counts.length; column++) {
    steady = isAt(lows[column]) && isAt(highs[column]) ? steady + 1 : 0;
    if (steady <= runIn) continue;
    counts[column] = 1;
    found = true;
  }
  return found ? counts : null;
}
