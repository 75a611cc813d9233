import { describe, expect, test } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import { defaultParameters } from '../../../shared/core/parameters/table.ts';
import { problemText, problemTexts } from '../../../shared/core/problem.ts';
import { onPage } from '../../../shared/core/sentence.ts';
import { parseMoves, writeMoves } from '../../../shared/files/linkText.ts';
import { readMoveList, writeMoveList, writeTimedMoveList } from '../../../shared/study/moveList.ts';

const p = defaultParameters();

function read(text: string) {
  const result = readMoveList(text, p);
  if ('problems' in result) throw new Error(problemTexts(result.problems, onPage('metric')).join('\n'));
  return result.moves;
}

function message(text: string): string {
  const result = readMoveList(text, p);
  if ('moves' in result) throw new Error('was read');
  return problemText(at(result.problems, 0), onPage('metric'));
}

const expected = [
  { to: 0.12, speed: 1, acceleration: 12, jerk: 600, dwell: 0.2 },
  { to: -0.05, speed: 0.5, acceleration: 8, jerk: 400, dwell: 0 },
];

describe('a column of process force', () => {
  const timed = 'to [mm], time [s], dwell [s], force [N]\n120, 2, 0.2, 150\n-50, 0.4, 0, 0\n';

  test('is of the cut, and a rapid move has none', () => {
    const [cut, rapid] = read(timed);
    expect(cut).toMatchObject({ to: 0.12, force: 150 });
    expect(rapid).not.toHaveProperty('force');
    expect(writeTimedMoveList(read(timed), 'metric')).toBe(timed);
  });

  test('stands beside limits as well, and has its own', () => {
    const header = 'to [mm], speed [m/s], acceleration [m/s²], jerk [m/s³], dwell [s], force [N]';
    expect(read(`${header}\n120, 1, 12, 600, 0.2, 80`)).toMatchObject([{ force: 80 }]);
    expect(message(`${header}\n120, 1, 12, 600, 0.2, -80`)).toMatch(/force.*0 N/s);
  });

  test('comes through the text of a link', () => {
    const moves = read(timed);
    expect(parseMoves(writeMoves(moves))).toEqual(moves.map((line) => ({ ...line })));
  });
});

describe('a pasted move list', () => {
  test.each<[string, string]>([
    [
      'with commas',
      'to [mm], speed [m/s], acceleration [m/s²], jerk [m/s³], dwell [s]\n120,1,12,600,0.2\n-50,.5,8,400,0',
    ],
    ['without header', '120, 1, 12, 600, 0.2\r\n\r\n-50, 0.5, 8, 4e2, 0\r\n'],
    [
      'from a spreadsheet',
      'To (mm)\tSpeed (m/s)\tAcceleration (m/s2)\tJerk (m/s3)\tDwell (s)\n120\t1\t12\t600\t0,2\n−50\t0,5\t8\t400\t0',
    ],
    ['with semicolons', '120;1;12;600;0,2\n-50;0,5;8;400;0'],
    [
      'in other units and order',
      'dwell ms, to m, speed mm/s, jerk m/s^3, acceleration m/s^2\n200,0.12,1000,600,12\n0,-0.05,500,400,8',
    ],
    [
      // 1 in = 25.4 mm by definition (NIST SP 811, 2008, app. B).
      'in inches',
      'to [in], speed [in/s], acceleration [in/s2], jerk [in/s^3], dwell [s]\n' +
        `${0.12 / 0.0254},${1 / 0.0254},${12 / 0.0254},${600 / 0.0254},0.2\n` +
        `${-0.05 / 0.0254},${0.5 / 0.0254},${8 / 0.0254},${400 / 0.0254},0`,
    ],
    ['with remarks', '# press\n120,1,12,600,0.2\n# station\n-50,0.5,8,400,0'],
  ])('%s', (_case, text) => {
    const moves = read(text);
    expect(moves).toHaveLength(2);
    for (const [index, move] of moves.entries()) {
      for (const [name, value] of Object.entries(move)) {
        expect(value).toBeCloseTo(at(expected, index)[name as 'to'], 12);
      }
    }
  });

  test('micrometres, with either letter for micro', () => {
    for (const unit of ['µm', 'μm', 'um']) {
      const text = `to [${unit}], speed [m/s], acceleration [m/s²], jerk [m/s³], dwell [s]\n15,1,12,600,0`;
      expect(at(read(text), 0).to).toBeCloseTo(15e-6, 15);
    }
  });

  test('reads back as it was written', () => {
    expect(read(writeMoveList(expected))).toEqual(expected);
  });
});

// The one-third trapezoid by hand: over s in t, v = 1.5 s/t, a = 6 s/t², j = 72 s/t³.
describe('a list of times', () => {
  const timed = 'to [mm], time [s], dwell [s]\n100, 0.5, 0.1\n-100, 0.4, 0\n';

  test('has the limits under which each move takes its time, the first one from where the last one ends', () => {
    const [out, back] = read(timed);
    for (const [move, t] of [
      [present(out), 0.5],
      [present(back), 0.4],
    ] as const) {
      expect(move.speed).toBeCloseTo(0.3 / t, 12);
      expect(move.acceleration).toBeCloseTo(1.2 / t ** 2, 12);
      expect(move.jerk).toBeCloseTo(14.4 / t ** 3, 9);
    }
    expect([present(out).to, present(back).to, present(out).dwell, present(back).dwell]).toEqual([
      0.1, -0.1, 0.1, 0,
    ]);
  });

  test('in inches is the same as in millimetres', () => {
    const inches = read(
      `dwell [ms], to ("), time [min]\n100, ${100 / 25.4}, ${0.5 / 60}\n0, ${-100 / 25.4}, ${0.4 / 60}\n`,
    );
    for (const [index, move] of read(timed).entries())
      for (const name of ['to', 'speed', 'acceleration', 'dwell'] as const)
        expect(at(inches, index)[name]).toBeCloseTo(move[name], 12);
  });

  test('stands for the time of a line that stays at its place', () => {
    const [, stay] = read('to [mm], time [s], dwell [s]\n100, 0.5, 0\n100, 0.25, 0.5\n0, 0.5, 0\n');
    expect(present(stay).dwell).toBe(0.75);
  });

  test('reads back as times, and a list with other limits as limits', () => {
    expect(writeTimedMoveList(read(timed), 'metric')).toBe(timed);
    expect(writeTimedMoveList(expected, 'metric')).toBe(writeMoveList(expected));
    const [first] = read(writeTimedMoveList(read(timed), 'inch'));
    expect(present(first).to).toBeCloseTo(0.1, 12);
    expect(writeTimedMoveList(read(timed), 'inch')).toMatch(/^to \[in\], time \[s\], dwell \[s\]\n3\.937/);
  });

  test.each<[string, string, RegExp]>([
    [
      'too quick',
      '100, 0.01, 0\n0, 0.5, 0',
      /^line 2, time: 10 ms is too short for a move over 100 mm\. Enter at least 54\.8 ms/,
    ],
    [
      'too slow',
      '100, 50, 0\n0, 0.5, 0',
      /^line 2, time: 50000 ms is too long for a move over 100 mm\. Enter at most/,
    ],
    ['without time', '100, 0, 0\n0, 0.5, 0', /^line 2, time: 0 ms is too short/],
    ['backwards in time', '100, -1, 0\n0, 0.5, 0', /^line 2, time: −1000 ms is too short/],
    ['without end', '100, 1e999, 0\n0, 0.5, 0', /^line 2, time: — is too long/],
    ['outside the travel', '400, 0.5, 0\n0, 0.5, 0', /^line 2, to: 400 mm is outside the travel/],
  ])('is refused %s', (_case, rows, why) => {
    expect(message(`to [mm], time [s], dwell [s]\n${rows}`)).toMatch(why);
  });

  test('does not take limits as well', () => {
    expect(message('to [mm], time [s], speed [m/s], dwell [s]\n100, 0.5, 1, 0')).toMatch(
      /^header: time replaces speed, acceleration and jerk\. Leave out time or speed \[m\/s\]/,
    );
    expect(message('to [mm], time [s]\n100, 0.5')).toMatch(/^header: the column dwell \[s\] is missing/);
  });
});

const HEADER = 'to [mm], speed [m/s], acceleration [m/s²], jerk [m/s³], dwell [s]';

test.each<[string, string, RegExp]>([
  ['empty', ' \n\n', /^The list is empty/],
  ['header alone', HEADER, /has a header but no moves/],
  ['endless', '1'.repeat(1_000_001), /too long/],
  ['too many lines', '1,1,1,1,1\n'.repeat(1001), /^moves: 1001 lines are too many/],
  ['columns missing', '120,1,12', /^line 1: it has 3 columns\. Enter 5: to \[mm\], speed/],
  [
    'word in a row',
    `${HEADER}\n\n120,fast,12,600,0`,
    /^line 3, speed: "fast" is not a number\. Enter a number in m\/s/,
  ],
  ['empty cell', '120,,12,600,0', /^line 1, speed: "" is not a number/],
  ['hexadecimal', '120,0x1,12,600,0', /^line 1, speed: "0x1" is not a number/],
  ['decimal comma between commas', '0,12,1,12,600,0', /^line 1: it has 6 columns/],
  ['NaN', '120,1,12,600,NaN', /^line 1, dwell: "NaN" is not a number/],
  ['overflow', '120,1,12,1e999,0', /^line 1, jerk: That number is too large/],
  ['too fast', '120,60,12,600,0', /^line 1, speed: 60 m\/s is outside/],
  ['outside the travel', '120,1,12,600,0\n400,1,12,600,0', /^line 2, to: 400 mm is outside the travel/],
  [
    'unknown column',
    `${HEADER.replace('dwell', 'wait')}\n1,1,1,1,1`,
    /^header: "wait \[s\]" is not one of to \[mm\]/,
  ],
  [
    'column twice',
    `${HEADER.replace('dwell [s]', 'to [mm]')}\n1,1,1,1,1`,
    /^header: "to \[mm\]" is not one of .*each once/,
  ],
  [
    'no unit',
    `${HEADER.replace(' [mm]', '')}\n1,1,1,1,1`,
    /^header: to needs a unit, one of mm, m, µm, nm, in: write "to \[mm\]"/,
  ],
  ['unit of something else', `${HEADER.replace('[mm]', '[s]')}\n1,1,1,1,1`, /^header: to needs a unit/],
  [
    'column missing',
    'to [mm], speed [m/s], acceleration [m/s²], jerk [m/s³]\n1,1,1,1',
    /^header: the column dwell \[s\] is missing/,
  ],
])('a list that is refused: %s', (_case, text, expectedMessage) => {
  expect(message(text)).toMatch(expectedMessage);
});
