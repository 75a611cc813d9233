import { ranged } from '../../shared/core/format.ts';
import type { RippleTest } from '../../shared/protocol/accuracy.ts';
import { rangeOf } from '../plot/range.ts';
import { axes, widenedLog } from '../plot/svg/axes.ts';
import { clipped, curve, drawing, labelOnWhite, labelWidth, type Size, textAt } from '../plot/svg/plot.ts';
import { type Markup, markup } from '../ui/markup.ts';

const SPECTRUM_SIZE: Size = { width: 640, height: 340 };

/** Weaker than this beside the strongest line, an amplitude is not on the scale. */
const FAINTEST = 1e-3;
const MAX_LINES = 4;
const LINE = 18;

interface Text {
  readonly number: string;
  readonly rows: readonly string[];
}

/**
 * Amplitude of the speed ripple at each period along the axis; the strongest lines are numbered and named below. With few of them the drawing is
 * less high.
 */
export function spectrumChart(
  test: RippleTest,
  among: readonly RippleTest[] = [test],
  size: Size = SPECTRUM_SIZE,
): Markup {
  const { period, amplitude } = test;
  const lines = test.lines.slice(0, MAX_LINES);
  const list = lines.map((each, k) => lineText(each, String(k + 1), size.width - 30));
  const listHeight = LINE * list.reduce((sum, { rows }) => sum + rows.length, 0);
  const plot = { width: size.width, height: size.height - LINE * 2 * MAX_LINES };
  const [shortest, longest] = rangeOf(...among.map((each) => each.period));
  const [, strongest] = rangeOf(
    ...among.flatMap((each) => [each.amplitude, each.lines.map((l) => l.amplitude)]),
  );
  const { frame, x, y, drawn } = axes(
    plot,
    { title: 'Period along the axis', unit: 'mm', from: shortest, to: longest, log: true },
    { title: 'Amplitude', unit: '%', ...widenedLog(strongest * FAINTEST, strongest * 1.5), log: true },
  );
  const foot = frame.top + frame.height;
  const marks = lines.map((each, k) =>
    labelOnWhite(
      x.at(each.period),
      Math.min(Math.max(y.at(each.amplitude) - 5, frame.top + 14), foot - 4),
      String(k + 1),
      'middle',
    ),
  );
  let below = plot.height + LINE - 4;
  const written = list.map(({ number, rows }) => {
    const drawnRows = rows.map((text, k) => textAt(28, below + LINE * k, text));
    const head = textAt(8, below, number);
    below += LINE * rows.length;
    return markup`${head}${drawnRows}`;
  });
  return drawing(
    { width: size.width, height: plot.height + listHeight + 6 },
    `Spectrum of the speed ripple. Strongest: ${test.lines.slice(0, MAX_LINES).map(plainText).join('; ')}.`,
    markup`${drawn}
${clipped(
  frame,
  curve(
    period.length,
    (k) => x.at(period[k]!),
    // What is nothing has no logarithm: it lies on the foot.
    (k) => (amplitude[k]! > 0 ? y.at(amplitude[k]!) : foot),
    { colour: 'var(--q-speed, #000)', width: 1.5 },
  ),
)}
${marks}
${written}`,
  );
}

type SpectralLine = RippleTest['lines'][number];

function plainText({ period, amplitude, cause }: SpectralLine): string {
  return `${ranged(period, 'mm')}, ${ranged(amplitude, '%')}, ${cause ?? 'no known cause'}`;
}

/** As many rows as it takes. */
function lineText(each: SpectralLine, number: string, room: number): Text {
  const rows: string[] = [];
  for (const word of plainText(each).split(' ')) {
    const longer = `${rows[rows.length - 1] ?? ''} ${word}`.trim();
    if (rows.length > 0 && labelWidth(longer) <= room) rows[rows.length - 1] = longer;
    else rows.push(word);
  }
  return { number, rows };
}
