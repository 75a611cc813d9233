import { describe, expect, it } from 'vitest';
import type { Envelope } from '../../../shared/sizing/sizing.ts';
import { envelopeChart } from '../../../src/drawings/envelope.ts';

/** Flat to 2 m/s, then nothing; the job asks for a given force at 1 m/s. */
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

const outside = (text: string) => text.match(/<circle[^>]*--alarm/g)?.length ?? 0;

describe('the chart of force against speed', () => {
  it('says in words what it shows, and names its curves', () => {
    const { text } = envelopeChart(envelopeOf(400));
    expect(text).toContain('role="img"');
    expect(text).toMatch(
      /aria-label="Force against speed\. At standstill 900 N for a short time and 300 N for ever, up to 2\.00 m\/s\. The job asks for up to 400 N, all within; RMS 200 N\."/,
    );
    for (const label of ['peak 900 N', 'for ever 300 N', 'job 400 N', 'RMS 200 N'])
      expect(text).toContain(label);
    expect(outside(text)).toBe(0);
  });

  it('marks what is asked beyond force or speed by points, and says so', () => {
    const strong = envelopeChart(envelopeOf(950)).text;
    expect(outside(strong)).toBe(1);
    expect(strong).toContain('in part more than the motors give');
    const fast = { ...envelopeOf(400), trajectory: [{ speed: 2.5, force: 50 }] };
    expect(outside(envelopeChart(fast).text)).toBe(1);
  });

  it('draws equal forces at equal heights whatever stands beside it', () => {
    const [small, large] = [envelopeOf(100, 400), envelopeOf(100, 3000)];
    const heightOf = (text: string) => /y="([\d.]+)"[^>]*>for ever/.exec(text)![1];
    const among = [small, large];
    expect(heightOf(envelopeChart(small, among).text)).toBe(heightOf(envelopeChart(large, among).text));
    expect(heightOf(envelopeChart(small).text)).not.toBe(heightOf(envelopeChart(large).text));
  });

  it('stands still for a job without motion', () => {
    const still = { ...envelopeOf(0), trajectory: [{ speed: 0, force: 0 }], rms: { speed: 0, force: 0 } };
    expect(envelopeChart(still).text).not.toMatch(/NaN|Infinity/);
  });
});
