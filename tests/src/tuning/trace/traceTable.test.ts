import { describe, expect, it } from 'vitest';
import { present } from '../../../../shared/core/at.ts';
import { CHANNEL_NAMES } from '../../../../shared/core/channels.ts';
import { problemTexts } from '../../../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../../../shared/core/sentence.ts';
import { readTraceTable, type TraceTable } from '../../../../src/tuning/trace/traceTable.ts';

function table(text: string): TraceTable {
  const result = readTraceTable(text);
  if ('problems' in result) throw new Error(problemTexts(result.problems, AS_WRITTEN).join('\n'));
  return result;
}

const names = (text: string) => table(text).columns.map(({ name }) => name);
const values = (text: string) => table(text).columns.map((column) => [...column.values]);
const guesses = (header: string) =>
  table(`${header}\n${header.replace(/[^;]+/g, '1')}`).columns.map(({ guess }) => guess);

function message(text: string): string {
  const result = readTraceTable(text);
  return 'problems' in result ? problemTexts(result.problems, AS_WRITTEN).join('\n') : '';
}

describe('a recording is read', () => {
  it.each([
    ['commas', 'a,b\n1,2.5\n-3e-2,4'],
    ['semicolons', 'a;b\n1;2.5\n-3e-2;4'],
    ['tabs', 'a\tb\n1\t2.5\n-3e-2\t4'],
    ['a decimal comma between semicolons', 'a;b\n1;2,5\n-3e-2;4'],
    ['a decimal comma between tabs', 'a\tb\n1\t2,5\n-0,03\t4,0'],
    ['quoted cells', '"a","b"\n"1","2.5"\n"-3e-2","4"'],
    ['a byte order mark', '\ufeffa,b\n1,2.5\n-3e-2,4'],
    ['Windows line ends', 'a,b\r\n1,2.5\r\n-3e-2,4\r\n'],
    ['old Macintosh line ends', 'a,b\r1,2.5\r-3e-2,4\r'],
    ['comments and empty lines', '# of the press axis\na,b\n\n1,2.5\n  % paused\n-3e-2,4\n\n'],
    ['blanks round cells', ' a , b \n 1 , 2.5 \n -3e-2 , 4 '],
    ['a true minus sign', 'a,b\n1,2.5\n−3e-2,4'],
    ['a trailing comma', 'a,b\n1,2.5,\n-3e-2,4,'],
  ])('with %s', (_case, text) => {
    expect(names(text)).toEqual(['a', 'b']);
    expect(values(text)).toEqual([
      [1, -0.03],
      [2.5, 4],
    ]);
  });

  it('without a header', () => {
    expect(names('1,2\n3,4')).toEqual(['column 1', 'column 2']);
    expect(values('1,2\n3,4')).toEqual([
      [1, 3],
      [2, 4],
    ]);
  });

  it('with names that hold the delimiter and quotes', () => {
    expect(names('"Position, load","the ""other"" one"\n1,2')).toEqual(['Position, load', 'the "other" one']);
  });

  it('with units in a second line', () => {
    expect(names('time;x;\ns;mm;\n0;1;\n1;2;')).toEqual(['time [s]', 'x [mm]', '']);
  });

  it('with gaps where cells are empty', () => {
    expect(values('a,b\n1,\nNaN,4')).toEqual([
      [1, Number.NaN],
      [Number.NaN, 4],
    ]);
  });

  it('with the line of each row, comments counted', () => {
    expect([...table('a,b\n# pause\n1,2\n\n3,4').lines]).toEqual([3, 5]);
  });

  it('with a column of words, which spoils only itself', () => {
    const [state, position] = table('state;x\nready;1\nmoving;2').columns;
    expect(present(state).bad).toEqual({ line: 2, text: '"ready"', count: 2 });
    expect(present(position).bad).toBeNull();
  });

  it.each([
    [
      'of a scope',
      'Recorder 4, axis X\nDate;2026-03-02 14:22:05\nSample time;125 us\n\nTime;Pos;Iq\ns;mm;A\n0;1;2\n1;2;3\n2;3;4',
      5,
    ],
    ['of comments and words', '# exported\nMould press, run 7\nt,x,i\n0,1,2\n1,2,3\n2,3,4', 3],
    ['with numbers of its own', 'Axis 1\nRate, 8000\nOffset, 0, 5\nt,x,i\n0,1,2\n1,2,3\n2,3,4', 4],
  ])('behind a preamble %s', (_case, text, headerLine) => {
    const read = table(text);
    expect(read.headerLine).toBe(headerLine);
    expect(read.columns.map((column) => [...column.values])).toEqual([
      [0, 1, 2],
      [1, 2, 3],
      [2, 3, 4],
    ]);
  });

  it('with the header where a person says it is', () => {
    const text = 'a;b\nx;y\nZeit;Lage\n0;1\n1;2\n2;3';
    const read = readTraceTable(text, 2);
    expect('columns' in read && read.columns.map(({ name }) => name)).toEqual(['x [Zeit]', 'y [Lage]']);
    const right = readTraceTable(text, 3);
    expect('columns' in right && right.columns.map(({ name }) => name)).toEqual(['Zeit', 'Lage']);
    const none = readTraceTable(text, 40);
    expect('problems' in none && problemTexts(none.problems, AS_WRITTEN)[0]).toContain('no line 40');
  });

  it('with a million rows', () => {
    const rows = Array.from({ length: 1_000_000 }, (_, k) => `${k}\t${k % 7}`);
    const [time, x] = table(`t\tx\n${rows.join('\n')}`).columns;
    expect(present(time).values).toHaveLength(1_000_000);
    expect(present(time).values[999_999]).toBe(999_999);
    expect(present(x).values[999_999]).toBe(999_999 % 7);
  });
});

describe('a recording is refused', () => {
  it.each([
    ['that is empty', '', /file is empty/],
    ['of comments only', '# nothing\n% here', /file is empty/],
    ['with a header only', 'time,x\n', /header but no samples/],
    [
      'with a row too short',
      'a,b,c\n1,2,3\n4,5\n7,8,9',
      /line 3: it has 2 columns, and the first line has 3/,
    ],
    ['with a row too long', 'a,b\n1,2\n4,5,6', /line 3: it has 3 columns, and the first line has 2/],
    ['with too many columns', `${'a,'.repeat(250)}a\n`, /line 1: 251 columns are too many. The limit is 200/],
    ['with too many rows', `a,b\n${'1,2\n'.repeat(1_000_001)}`, /line 1000002: more than 1000000 rows/],
  ])('%s', (_case, text, expected) => expect(message(text)).toMatch(expected));

  it('in one message, however many lines are wrong', () => {
    expect(message(`a,b\n${'1\n'.repeat(5000)}`).split('\n')).toEqual([
      'line 2: it has 1 columns, and the first line has 2. So it is in 4999 more lines. Give every line the same number, or state which line is the header.',
    ]);
  });
});

describe('titles suggest what a column holds', () => {
  it.each([
    ['Time (ms)', 'time', 'ms', false],
    ['Zeit [ms]', 'time', 'ms', false],
    ['Istposition [µm]', 'position', 'µm', false],
    ['Lage Ist [Inkr]', 'position', 'counts', false],
    ['Sollposition [mm]', 'setpoint', 'mm', false],
    ['Motorlage [mm]', 'motorPosition', 'mm', false],
    ['Tischposition [mm]', 'tablePosition', 'mm', false],
    ['Iststrom [A eff]', 'current', 'A', true],
    ['Sollstrom [Aeff]', 'currentCommand', 'A', true],
    ['Strom [mA]', 'current', 'mA', false],
    ['Current actual (mArms)', 'current', 'mA', true],
    ['Current [% rated]', 'current', '% of rated', false],
    ['Position [counts]', 'position', 'counts', false],
    ['Schleppfehler [µm]', null, 'µm', false],
    ['Geschwindigkeit Ist [mm/s]', null, 'mm/s', false],
    ['t [s]', 'time', 's', false],
    ['Actual position [mm]', 'position', 'mm', false],
    ['encoder_um', 'position', 'µm', false],
    ['position/nm', 'position', 'nm', false],
    ['Position setpoint [mm]', 'setpoint', 'mm', false],
    ['target position (m)', 'setpoint', 'm', false],
    ['motorPosition [mm]', 'motorPosition', 'mm', false],
    ['Load position [mm]', 'tablePosition', 'mm', false],
    ['Iq [A]', 'current', 'A', false],
    ['Actual current [Arms]', 'current', 'A', true],
    ['Iq command [A rms]', 'currentCommand', 'A', true],
    ['current setpoint (Apk)', 'currentCommand', 'A', false],
    ['Following error [mm]', null, 'mm', false],
    ['Motor temperature [°C]', null, '°C', false],
    ['Velocity command [mm/s]', null, 'mm/s', false],
    ['position [A]', null, 'A', false],
    ['status', null, null, false],
  ])('%s', (title, quantity, unit, rms) => {
    expect(guesses(`${title};other`)[0]).toEqual({ quantity, unit, rms });
  });

  it('of our own export without doubt: every channel, in SI', () => {
    const { columns } = table(`${CHANNEL_NAMES.join(',')}\n${CHANNEL_NAMES.map(() => 1).join(',')}`);
    const used = columns.filter(({ guess }) => guess.quantity !== null);
    expect(used.map(({ name, guess }) => [name, guess.quantity, guess.unit])).toEqual([
      ['time', 'time', 's'],
      ['setpoint', 'setpoint', 'm'],
      ['motorPosition', 'motorPosition', 'm'],
      ['tablePosition', 'tablePosition', 'm'],
      ['encoderPosition', 'position', 'm'],
      ['currentCommand', 'currentCommand', 'A'],
      ['forceCurrent', 'current', 'A'],
    ]);
  });
});
