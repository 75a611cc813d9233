import { describe, expect, it } from 'vitest';
import { arrangementFor } from '../../../src/loop/panes/arrangement.ts';
import { FrequencyAxis, tickText } from '../../../src/plot/loop/frequencyAxis.ts';
import { LevelScale } from '../../../src/plot/loop/levelScale.ts';

describe('the frequency axis', () => {
  const axis = () => {
    const made = new FrequencyAxis();
    made.setRange(1, 4000);
    return made;
  };

  it('is logarithmic, and reads back where a frequency stands', () => {
    const a = axis();
    expect(a.fraction(1)).toBe(0);
    expect(a.fraction(4000)).toBe(1);
    expect(a.fraction(100) - a.fraction(10)).toBeCloseTo(a.fraction(10) - a.fraction(1), 12);
    expect(a.frequencyAt(a.fraction(77))).toBeCloseTo(77, 9);
  });

  it('zooms about a place, which stays, and no further than there is something to see', () => {
    const a = axis();
    const at = a.fraction(100);
    a.zoom(0.5, at);
    expect(a.frequencyAt(at)).toBeCloseTo(100, 9);
    expect(Math.log(a.to / a.from)).toBeCloseTo(Math.log(4000) / 2, 9);
    a.zoom(10, at);
    expect(a.isWhole).toBe(true);
    for (let k = 0; k < 50; k++) a.zoom(0.5, at);
    expect(a.to / a.from).toBeCloseTo(1.25, 9);
  });

  it('stops at its ends', () => {
    const a = axis();
    a.zoom(0.5, 0.5);
    for (let k = 0; k < 30; k++) a.pan(0.1);
    expect(a.to).toBeCloseTo(4000, 6);
  });

  it('keeps what was zoomed to when the range changes, and follows it otherwise', () => {
    const a = axis();
    a.setRange(0.1, 8000);
    expect([a.from, a.to]).toEqual([0.1, 8000]);
    a.zoom(0.3, 0.5);
    const { from } = a;
    a.setRange(0.1, 4000);
    expect(a.from).toBeCloseTo(from, 9);
  });

  it('has its ticks at every digit', () => {
    const a = axis();
    expect(
      a
        .ticks()
        .slice(0, 11)
        .map(({ value }) => value),
    ).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 20]);
    expect([0.1, 20, 1000, 2000].map(tickText)).toEqual(['0.1', '20', '1k', '2k']);
  });
});

describe('a scale of levels', () => {
  const scale = () => new LevelScale({ steps: [10, 20, 40], min: [-20, 20], max: [-80, 60] });

  it('holds the curves between the least and the most that it shows', () => {
    const s = scale();
    s.fit(-3, 3, 200, 14);
    expect([s.low, s.high]).toEqual([-20, 20]);
    s.fit(-33, 41, 200, 14);
    expect([s.low, s.high]).toEqual([-40, 50]);
    s.fit(-500, 500, 200, 14);
    expect([s.low, s.high]).toEqual([-80, 60]);
  });

  it('does not flicker: it closes in only when much is gained', () => {
    const s = scale();
    s.fit(-60, 40, 200, 14);
    s.fit(-55, 35, 200, 14);
    expect([s.low, s.high]).toEqual([-60, 40]);
    s.fit(-20, 20, 200, 14);
    expect([s.low, s.high]).toEqual([-20, 20]);
  });

  it('leaves a line of text between its ticks', () => {
    const s = scale();
    for (const height of [50, 100, 300]) {
      s.fit(-60, 60, height, 14);
      expect((height * s.step) / (s.high - s.low)).toBeGreaterThan(14);
    }
  });
});

describe('the arrangement', () => {
  it.each([
    [73, 15, 'wide'],
    [48, 14, 'narrow'],
    [73, 30, 'full'],
    [48, 30, 'tall'],
  ])('of %i by %i lines is %s, and every plot can be had', (width, height, name) => {
    const arrangement = arrangementFor(width, height);
    expect(arrangement.name).toBe(name);
    expect(arrangement.slots.flat().toSorted()).toEqual([
      'closed',
      'eigenvalues',
      'nyquist',
      'open',
      'stiffness',
    ]);
  });
});
