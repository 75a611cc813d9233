import { ranged } from '../../shared/core/format.ts';
import type { RippleTest } from '../../shared/protocol/accuracy.ts';
import { axes } from '../plot/axes.ts';
import { type Drawing, drawing } from '../plot/drawing.ts';
import { footOf, type Size } from '../plot/frame.ts';
import { inside } from '../plot/inside.ts';
import { curve, label, labelWidth, type Mark } from '../plot/marks.ts';
import { greatestOf, rangeOf, widenedLog } from '../plot/range.ts';

const SPECTRUM_SIZE: Size = { width: 640, height: 340 };

/** Weaker than this beside the strongest line, an amplitude is not on the scale. */
const FAINTEST = 1e-3;
const MAX_LINES = 4;
const LINE = 18;

type SpectralLine = RippleTest['lines'][number];

/**
 * Amplitude of the speed ripple at each period along the axis; the strongest lines are numbered and
 * named below. With few of them the drawing is less high.
 */
export function spectrumChart(
  test: RippleTest,
  among: readonly RippleTest[] = [test],
  size: Size = SPECTRUM_SIZE,
): Drawing {
  const lines = test.lines.slice(0, MAX_LINES);
  const plot = { width: size.width, height: size.height - LINE * 2 * MAX_LINES };
  const [shortest, longest] = rangeOf(...among.map((each) => each.period));
  const strongest = greatestOf(
    ...among.flatMap((each) => [each.amplitude, each.lines.map(({ amplitude }) => amplitude)]),
  );
  const made = axes(
    plot,
    { title: 'Period along the axis', unit: 'mm', from: shortest, to: longest, log: true },
    { title: 'Amplitude', unit: '%', ...widenedLog(strongest * FAINTEST, strongest * 1.5), log: true },
  );
  const { frame, x, y } = made;
  const numbers = lines.map(({ period, amplitude }, k) =>
    label(
      x.at(period),
      Math.min(Math.max(y.at(amplitude) - 10, frame.top + 9), footOf(frame) - 9),
      String(k + 1),
      { align: 'middle', halo: true },
    ),
  );
  const list = listed(lines, plot);
  return drawing(
    { width: size.width, height: list.foot + 6 },
    `Spectrum of the speed ripple. Strongest: ${lines.map(plainText).join('; ')}.`,
    [
      ...made.marks,
      ...inside(frame, [curve(test.period, test.amplitude, made, { colour: 'speed', width: 1.5 })]),
      ...numbers,
      ...list.marks,
    ],
  );
}

/** The lines with their numbers below the plot, and where the list ends. */
function listed(
  lines: readonly SpectralLine[],
  plot: Size,
): { readonly marks: readonly Mark[]; readonly foot: number } {
  const marks: Mark[] = [];
  let foot = plot.height;
  for (const [k, each] of lines.entries()) {
    marks.push(label(8, foot + LINE / 2, String(k + 1)));
    for (const row of rowsOf(plainText(each), plot.width - 30)) {
      marks.push(label(28, foot + LINE / 2, row));
      foot += LINE;
    }
  }
  return { marks, foot };
}

function plainText({ period, amplitude, cause }: SpectralLine): string {
  return `${ranged(period, 'mm')}, ${ranged(amplitude, '%')}, ${cause ?? 'no known cause'}`;
}

/** As many rows as it takes. */
function rowsOf(text: string, room: number): string[] {
  const rows: string[] = [];
  for (const word of text.split(' ')) {
    const longer = `${rows[rows.length - 1] ?? ''} ${word}`.trim();
    if (rows.length > 0 && labelWidth(longer) <= room) rows[rows.length - 1] = longer;
    else rows.push(word);
  }
  return rows;
}
