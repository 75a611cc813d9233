import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';

const css = readFileSync('src/ui/look/tokens.css', 'utf8');
const block = (selector: string) =>
  Object.fromEntries(
    [
      ...at(css.slice(css.indexOf(`${selector} {`)).split('}'), 0).matchAll(/(--[\w-]+): (#[0-9a-f]{6});/g),
    ].map(([, name, value]) => [name, value]),
  );
const themes = { light: block(':root'), dark: block(':root[data-theme="dark"]') };

type Triple = [number, number, number];

/** sRGB transfer function, IEC 61966-2-1. */
const linear = (hex: string) =>
  [1, 3, 5].map((i) => {
    const v = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  }) as Triple;

const luminance = (hex: string) => {
  const [r, g, b] = linear(hex);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

/** Contrast ratio, Web Content Accessibility Guidelines 2.2, "relative luminance" and "contrast ratio". */
function contrast(a: string, b: string): number {
  const [y, z] = [luminance(a), luminance(b)];
  return (Math.max(y, z) + 0.05) / (Math.min(y, z) + 0.05);
}

/**
 * Full protanopia, deuteranopia and tritanopia in linear RGB: Machado, Oliveira, Fernandes, A physiologically-based
 * model for simulation of color vision deficiency, IEEE TVCG 15(6), 2009, table 1.
 */
const sight: Record<string, number[][]> = {
  full: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};
const seen = (rgb: Triple, matrix: number[][]) =>
  matrix.map((row) =>
    Math.min(1, Math.max(0, at(row, 0) * rgb[0] + at(row, 1) * rgb[1] + at(row, 2) * rgb[2])),
  ) as Triple;

/** Ottosson, "A perceptual color space for image processing" (OKLab), 2020. */
function oklab([r, g, b]: Triple): Triple {
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

describe.each(Object.entries(themes))('tokens, %s', (_theme, tokens) => {
  const quantities = Object.keys(tokens).filter((name) => name.startsWith('--q-'));

  it('has the nine quantities', () => {
    expect(quantities).toHaveLength(9);
  });

  // 3:1 is the least for graphics, 4.5:1 for text (WCAG 2.2, 1.4.11 and 1.4.3).
  it.each(quantities)('%s reads on ground and panel', (name) => {
    expect(contrast(tokens[name], tokens['--ground'])).toBeGreaterThan(4);
    expect(contrast(tokens[name], tokens['--panel'])).toBeGreaterThan(4.5);
  });

  it.each([
    ['--ink', '--ground'],
    ['--ink', '--panel'],
    ['--ink', '--raised'],
    ['--ink-soft', '--ground'],
    ['--ink-soft', '--panel'],
    ['--ink-soft', '--raised'],
    ['--accent', '--panel'],
    ['--accent-ink', '--accent'],
    ['--alarm', '--panel'],
    ['--alarm', '--alarm-ground'],
    ['--ink', '--alarm-ground'],
    ['--caution', '--caution-ground'],
    ['--ink', '--caution-ground'],
  ])('text %s on %s', (text, ground) => {
    expect(contrast(tokens[text], tokens[ground])).toBeGreaterThan(4.5);
  });

  it('edges of controls stand out', () => {
    expect(contrast(tokens['--line-strong'], tokens['--panel'])).toBeGreaterThan(3);
  });

  // OKLab's unit is chosen so that about 0.02 is just seen side by side; three times that is kept. From memory.
  it.each(Object.keys(sight))('quantities stay apart with %s sight', (kind) => {
    const colours = quantities.map((name) => oklab(seen(linear(tokens[name]), present(sight[kind]))));
    for (const [i, a] of colours.entries()) {
      for (const [j, b] of colours.entries()) {
        if (j > i) {
          expect(
            Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]),
            `${quantities[i]} and ${quantities[j]}`,
          ).toBeGreaterThan(0.06);
        }
      }
    }
  });
});
