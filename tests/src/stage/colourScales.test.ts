import { describe, expect, it } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import { HEAT_MIDDLE, heatColour, heatShare, signedColour } from '../../../src/stage/build/colourScales.ts';

/** Relative luminance of a screen colour: WCAG 2.2, from IEC 61966-2-1. */
function luminance(rgb: readonly number[]): number {
  const [r, g, b] = rgb.map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * present(r) + 0.7152 * present(g) + 0.0722 * present(b);
}

describe('the colours of the cut-away', () => {
  it('are lightest at zero current and darken both ways', () => {
    for (const sign of [-1, 1]) {
      let before = luminance(signedColour(0));
      expect(before).toBeGreaterThan(0.7);
      for (let share = 0.1; share <= 1; share += 0.1) {
        const now = luminance(signedColour(sign * share));
        expect(now).toBeLessThan(before);
        before = now;
      }
    }
  });

  it('tell the sign by hue: blue leads on one side, red on the other', () => {
    const [minus, plus] = [signedColour(-0.8), signedColour(0.8)];
    expect(minus[2]).toBeGreaterThan(minus[0]);
    expect(plus[0]).toBeGreaterThan(plus[2]);
  });

  it('lighten steadily with temperature, so that grey print keeps the order', () => {
    let before = -1;
    for (let share = 0; share <= 1; share += 0.05) {
      const now = luminance(heatColour(share));
      expect(now).toBeGreaterThan(before);
      before = now;
    }
  });

  it('stop at the ends of their scale', () => {
    expect(signedColour(7)).toEqual(signedColour(1));
    expect(heatColour(-3)).toEqual(heatColour(0));
  });
});

describe('the place of a temperature along the colours', () => {
  it('is that of the legend at its ends and in its middle', () => {
    expect(heatShare(22, 22, 130)).toBe(0);
    expect(heatShare(22 + HEAT_MIDDLE * 108, 22, 130)).toBeCloseTo(0.5, 12);
    expect(heatShare(130, 22, 130)).toBe(1);
    expect([heatShare(-20, 22, 130), heatShare(200, 22, 130)]).toEqual([0, 1]);
  });

  it('sets a table of two kelvins above ambient apart from a cold one', () => {
    const [cold, warm] = [heatColour(heatShare(22, 22, 130)), heatColour(heatShare(24, 22, 130))];
    expect(Math.hypot(...cold.map((part, k) => part - present(warm[k])))).toBeGreaterThan(0.2);
  });
});
