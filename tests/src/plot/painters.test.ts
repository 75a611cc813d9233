import { describe, expect, it } from 'vitest';
import { paint } from '../../../src/plot/canvas/paint.ts';
import type { Theme } from '../../../src/plot/canvas/theme.ts';
import { drawing } from '../../../src/plot/drawing.ts';
import { inside } from '../../../src/plot/inside.ts';
import { area, circle, curve, label, line, type Mark, point } from '../../../src/plot/marks.ts';
import { DASHES } from '../../../src/plot/pens.ts';
import { linearScale } from '../../../src/plot/scale.ts';
import { svg } from '../../../src/plot/svg.ts';

const FRAME = { left: 10, top: 20, width: 200, height: 100 };
const SCALES = { x: linearScale(0, 4, 10, 210), y: linearScale(0, 4, 120, 20) };
const CURVE = curve([0, 1, 2, 3, 4], [0, 3, Number.NaN, 1, 2], SCALES, {
  colour: 'force',
  width: 2,
  dash: 'dashed',
  opacity: 0.5,
});

const THEME: Theme = { colour: (colour) => `the ${colour}`, textSize: 14, font: '14px sans-serif' };

/** What is done to a canvas, call by call, with the styles at that moment. */
function painted(marks: readonly Mark[]): string[] {
  const calls: string[] = [];
  const state: Record<string, unknown> = {};
  const context = new Proxy(state, {
    get:
      (_, name) =>
      (...values: unknown[]) => {
        const style = { stroke: state.strokeStyle, fill: state.fillStyle, fillText: state.fillStyle }[
          String(name)
        ];
        calls.push([String(name), ...values.map(String), ...(style ? [String(style)] : [])].join(' '));
      },
  });
  paint(context as unknown as CanvasRenderingContext2D, THEME, marks);
  return calls;
}

const svgOf = (marks: readonly Mark[]) => svg(drawing({ width: 220, height: 140 }, 'A chart.', marks)).text;

describe('both painters', () => {
  it('draw a curve through the same places', () => {
    const calls = painted([CURVE]);
    expect(calls.filter((call) => /^(moveTo|lineTo)/.test(call))).toEqual([
      'moveTo 10 120',
      'lineTo 60 45',
      'moveTo 160 95',
      'lineTo 210 70',
    ]);
    expect(svgOf([CURVE])).toContain('d="M10 120L60 45M160 95L210 70"');
  });

  it('draw it in the same colour and dashes', () => {
    const calls = painted([CURVE]);
    expect(calls).toContain(`setLineDash ${DASHES.dashed.join(',')}`);
    expect(calls).toContain('stroke the force');
    expect(svgOf([CURVE])).toContain(
      'stroke="var(--q-force, #000)" stroke-width="2" stroke-linejoin="round" stroke-dasharray="10 5" stroke-opacity="0.5"',
    );
  });

  it('cut off at a frame', () => {
    const marks = inside(FRAME, [CURVE]);
    const calls = painted(marks);
    expect(calls.indexOf('rect 10 20 200 100')).toBeLessThan(calls.indexOf('clip'));
    expect(calls.indexOf('clip')).toBeLessThan(calls.indexOf('moveTo 10 120'));
    expect(svgOf(marks)).toContain('<svg x="10" y="20" width="200" height="100" viewBox="10 20 200 100">');
  });

  it('fill a ring with the ground, and put a halo of it round a label', () => {
    const marks = [point(50, 60, 'ring', 3, { colour: 'error' }), label(1, 2, 'text', { halo: true })];
    const calls = painted(marks);
    expect(calls).toEqual(
      expect.arrayContaining(['fill the ground', 'stroke the error', 'fillText text 0 0 the ink']),
    );
    expect(svgOf(marks)).toMatch(
      /<circle cx="50" cy="60" r="3" fill="var\(--paper, #fff\)" stroke="var\(--q-error, #000\)"/,
    );
    expect(svgOf(marks)).toMatch(/<text x="1" y="7.04" text-anchor="start" stroke="var\(--paper, #fff\)"/);
  });

  it('leave out what has no place', () => {
    const { NaN: nowhere } = Number;
    const marks = [
      point(nowhere, 1, 'dot', 2),
      line(0, 0, nowhere, 1),
      circle(0, 0, nowhere, { pen: {} }),
      area({ ...FRAME, height: nowhere }, { colour: 'ink' }),
      label(nowhere, 0, 'lost'),
    ];
    expect(painted(marks)).toEqual([]);
    expect(svgOf(marks)).not.toMatch(/NaN|<(path|circle|rect|text)/);
  });
});

describe('SVG', () => {
  it('writes text as text, whatever is in it', () => {
    const text = svgOf([label(0, 0, '<script>"&')]);
    expect(text).not.toContain('<script');
    expect(text).toContain('&lt;script&gt;&quot;&amp;');
  });
});

describe('a canvas', () => {
  it('shows a thin upright line on whole pixels', () => {
    expect(painted([line(10.2, 5, 10.2, 90)])).toEqual(
      expect.arrayContaining(['moveTo 10.5 5', 'lineTo 10.5 90']),
    );
  });
});
