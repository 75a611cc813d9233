import { describe, expect, it } from 'vitest';
import type { Envelope } from '../../../shared/sizing/sizing.ts';
import { envelopeChart } from '../../../src/drawings/envelope.ts';
import type { Drawing } from '../../../src/plot/drawing.ts';
import { labelWidth } from '../../../src/plot/marks.ts';
import { labelOf, marksOf, textsIn } from '../plot/readDrawing.ts';

/** Flat to 2 m/s, then nothing; the job needs a given force at 1 m/s. */
const envelopeOf = (asked: number, peak = 900): Envelope => ({
  speed: [0, 2, 2],
  continuous: [300, 300, 0],
  peak: [peak, peak, 0],
  trajectory: [
    { speed: 0, force: 10 },
    { speed: 1, force: asked },
    { speed: 1.2, force: 20 },
  ],
  rms: { speed: 0.8, force: asked / 2 },
});

const outside = (drawing: Drawing) =>
  marksOf(drawing.marks, 'point').filter(({ pen }) => pen.colour === 'alarm').length;

describe('the chart of force against speed', () => {
  it('says in words what it shows, and names its curves', () => {
    const drawing = envelopeChart(envelopeOf(400));
    expect(drawing.description).toBe(
      'Force against speed. At standstill 900 N peak and 300 N continuous, up to 2.00 m/s. The job needs up to 400 N, all within the peak force; RMS 200 N.',
    );
    expect(textsIn(drawing)).toEqual(
      expect.arrayContaining(['peak 900 N', 'continuous 300 N', 'job 400 N', 'RMS 200 N']),
    );
    expect(outside(drawing)).toBe(0);
  });

  it('marks what is needed beyond force or speed by points, and says so', () => {
    const strong = envelopeChart(envelopeOf(950));
    expect(outside(strong)).toBe(1);
    expect(strong.description).toContain('partly more than the motors can give');
    const fast = { ...envelopeOf(400), trajectory: [{ speed: 2.5, force: 50 }] };
    expect(outside(envelopeChart(fast))).toBe(1);
  });

  it('draws equal forces at equal heights whatever is beside it', () => {
    const [small, large] = [envelopeOf(100, 400), envelopeOf(100, 3000)];
    const among = [small, large];
    const height = (...args: Parameters<typeof envelopeChart>) =>
      labelOf(envelopeChart(...args), 'continuous 300 N').y;
    expect(height(small, among)).toBe(height(large, among));
    expect(height(small)).not.toBe(height(large));
  });

  it.each([220, 262, 300, 420])('keeps the name of the continuous force within a chart of %i px', (width) => {
    // The curve ends in the middle of the chart.
    const faster = { ...envelopeOf(400), speed: [0, 3.5, 3.5] };
    const { x, align, text } = labelOf(
      envelopeChart(envelopeOf(400), [envelopeOf(400), faster], { width, height: 250 }),
      'continuous 300 N',
    );
    const [from, to] = align === 'end' ? [x - labelWidth(text), x] : [x, x + labelWidth(text)];
    expect(from).toBeGreaterThan(0);
    expect(to).toBeLessThanOrEqual(width);
  });

  it('can be drawn of a job without motion', () => {
    const still = { ...envelopeOf(0), trajectory: [{ speed: 0, force: 0 }], rms: { speed: 0, force: 0 } };
    expect(JSON.stringify(envelopeChart(still).marks)).not.toContain('null');
  });
});
