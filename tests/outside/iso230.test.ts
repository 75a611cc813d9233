import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { at } from '../../shared/core/at.ts';
import { evaluatePositioning } from '../../workers/accuracy/iso230.ts';

/*
 * A measured axis: github.com/paulscherrerinstitute/ecmccfg, examples/test/fat_sat/report.md, five targets, five cycles. Positions in mm.
 * Formulas: ISO 230-2:2014, clause 3 (from memory).
 */
const TARGETS = [-10, -4.88, 0.24, 5.36, 10.48];
const FORWARD = [
  [-10.00008102, -10.00010202, -10.00008702, -10.00009202, -10.00010002],
  [-4.88008702, -4.88009702, -4.88009702, -4.88009502, -4.88008202],
  [0.23992798, 0.23990998, 0.23991198, 0.23991298, 0.23991298],
  [5.35989798, 5.35991398, 5.35991398, 5.35990698, 5.35992198],
  [10.47989998, 10.47988798, 10.47987098, 10.47989098, 10.47990298],
];
const BACKWARD = [
  [-10.00009902, -10.00009402, -10.00008202, -10.00009102, -10.00009402],
  [-4.88010302, -4.88010402, -4.88009502, -4.88011102, -4.88009302],
  [0.23991398, 0.23989798, 0.23990898, 0.23992398, 0.23990098],
  [5.35992798, 5.35990798, 5.35990498, 5.35989698, 5.35991898],
  [10.47989598, 10.47987398, 10.47986998, 10.47985898, 10.47989298],
];

/** mm to m, less the target. */
const deviations = (positions: readonly (readonly number[])[]) =>
  positions.map((row, i) => row.map((position) => (position - at(TARGETS, i)) * 1e-3));

/** Half of the last digit printed, 0.01 nm, and a rounding of the data. */
const PRINTED = 6e-12;

describe('positioning of a measured axis, nm', () => {
  const found = evaluatePositioning(deviations(FORWARD), deviations(BACKWARD));
  const expectNm = (value: number, printed: number) =>
    expect(Math.abs(value - printed * 1e-9)).toBeLessThan(PRINTED);

  it.each([
    ['meanUp', [-92.42, -91.62, -84.82, -89.02, -109.42]],
    ['meanDown', [-92.02, -101.22, -90.82, -88.62, -121.62]],
    ['spreadUp', [8.79, 6.77, 7.26, 9, 12.58]],
    ['spreadDown', [6.28, 7.29, 10.43, 12.18, 15.73]],
  ] as const)('has at its targets, as printed, %s', (name, printed) => {
    printed.forEach((value, i) => {
      expectNm(at(found[name], i), value);
    });
  });

  it.each([
    ['reversal', 12.2],
    ['meanReversal', 5.4],
    ['repeatabilityUp', 50.33],
    ['repeatabilityDown', 62.9],
    ['systematicUp', 24.6],
    ['systematicDown', 33],
    ['meanRange', 27.7],
    ['accuracyUp', 64.28],
    ['accuracyDown', 88.81],
    // The band from below lies within the one from above.
    ['accuracy', 88.81],
  ] as const)('has, as printed, %s of %d', (name, printed) => {
    expectNm(found[name], printed);
  });

  // The report calls max (R↑; R↓) and E↑ bidirectional. By the standard's definitions R is the largest R_i, which the report prints as
  // 68.82 at its last target, and E spans the printed means of both directions: −84.82 − (−121.62).
  it.each([
    ['repeatability', 68.82],
    ['systematic', 36.8],
  ] as const)('has by the definitions of the standard %s of %d', (name, defined) => {
    expectNm(found[name], defined);
  });
});

it('refuses what has no spread, and sides that do not match', () => {
  expect(() => evaluatePositioning([[0]], [[0, 0]])).toThrow(/1 approaches.*at least 2/);
  expect(() => evaluatePositioning([[0, 0]], [])).toThrow(/up has 1 targets and down 0/);
});

// Evaluated independently, with numpy: iso230_reference.py, 100 random tests of 1 to 7 targets and 2 to 5 approaches, nm.
it('evaluates random tests as another program does', () => {
  const text = readFileSync(new URL('iso230-random.json', import.meta.url), 'utf8');
  const sets: readonly { up: number[][]; down: number[][]; figures: Record<string, number> }[] =
    JSON.parse(text);
  expect(sets).toHaveLength(100);
  const metres = (rows: number[][]) => rows.map((row) => row.map((deviation) => deviation * 1e-9));
  for (const { up, down, figures } of sets) {
    const found = evaluatePositioning(metres(up), metres(down));
    const size = Math.max(...[...up, ...down].flat().map(Math.abs));
    for (const [name, nanometres] of Object.entries(figures))
      expect(Math.abs(Number(found[name as keyof typeof found]) / 1e-9 - nanometres), name).toBeLessThan(
        1e-9 * size,
      );
  }
});
