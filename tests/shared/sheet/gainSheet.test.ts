import { describe, expect, it } from 'vitest';
import packageJson from '../../../package.json' with { type: 'json' };
import { DEFAULT_SCENE, SCENES } from '../../../scenes/index.ts';
import { isInUse } from '../../../shared/axis/inUse.ts';
import { gainsInStructure } from '../../../shared/axis/loop/loopGains.ts';
import { at, present } from '../../../shared/core/at.ts';
import {
  defaultParameters,
  type ParameterChanges,
  type ParameterName,
  type Parameters,
} from '../../../shared/core/parameters/table.ts';
import { problemTexts } from '../../../shared/core/problem.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { AS_WRITTEN } from '../../../shared/core/sentence.ts';
import { tuningOf } from '../../../shared/core/tuning.ts';
import { WAYBENCH_VERSION } from '../../../shared/core/version.ts';
import { gainsFromSheet, writeGainSheet, writeGainSheetCsv } from '../../../shared/files/gainSheetFile.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import type { AskedOfSheet } from '../../../shared/sheet/askedRows.ts';
import { type GainSheet, gainSheet } from '../../../shared/sheet/gainSheet.ts';
import type { SheetRow } from '../../../shared/sheet/row.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { CurrentLoop } from '../../../workers/control/currentLoop.ts';
import { PositionLoop } from '../../../workers/control/positionLoop.ts';
import { measureRun } from '../../../workers/run/measureRun.ts';
import { always, anyScene } from '../core/arbitraries.ts';
import { evaluated } from './sheetFormula.ts';

const scene = (changes: ParameterChanges = {}): Scene => ({
  ...DEFAULT_SCENE,
  parameters: { ...DEFAULT_SCENE.parameters, ...changes },
});

const everything = (given: Scene): GainSheet => {
  const point = startingPoint(given.parameters);
  const move = at(measureRun(given, 0.9).moves, 0);
  return gainSheet(given, { loops: [{ point, figures: analyse(given.parameters, point).figures }], move });
};

const FILTERS = { filter1: 'notch', filter2: 'notch', filter2Depth: 0.02, filter3: 'low-pass' } as const;

const rowsOf = (sheet: GainSheet): SheetRow[] => [
  ...sheet.sections.flatMap(({ rows }) => rows),
  ...sheet.scaled.flatMap(({ forms }) => forms),
];

/** Value of the row with this symbol and unit in a section. */
function valueIn(sheet: GainSheet, section: string, symbol: string, unit: string): number {
  const found = present(sheet.sections.find(({ id }) => id === section)).rows.find(
    (row) => row.symbol === symbol && row.unit === unit,
  );
  return present(found).value as number;
}

/** A gain per `per` in the drive's measure of output: 'A', '% of i_pk'. */
function scaledOf(sheet: GainSheet, symbol: string, per: string, output: string): number {
  const gain = present(sheet.scaled.find((each) => each.symbol === symbol && each.per === per));
  const ending = per === '' ? `, ${output}` : `, ${output} per ${per}`;
  return present(gain.forms.find(({ label }) => label.endsWith(ending))).value as number;
}

describe('entered into a drive that counts', () => {
  const p: Parameters = {
    ...scene(FILTERS).parameters,
    encoderResolution: 5e-8,
    peakCurrent: 18,
    motorCount: 2,
    forceBias: 37,
    speedFeedforward: 21,
    positionDivider: 3,
  };
  const sheet = gainSheet(scene(p));

  /** Amperes from one unit of the drive's output, from the datasheet values alone. */
  const amperes: Record<string, number> = {
    N: Math.SQRT2 / p.forceConstant,
    'A peak': 1,
    'A RMS': Math.SQRT2,
    '% of i_pk': p.peakCurrent / 100,
    '% of F_c': ((p.continuousForce * p.motorCount) / 100) * (Math.SQRT2 / p.forceConstant),
  };

  /** A filter as its coefficients stand on the sheet. */
  function filter(section: string): (x: number) => number {
    const [b0, b1, b2, a1, a2] = ['b0', 'b1', 'b2', 'a1', 'a2'].map((symbol) =>
      valueIn(sheet, section, symbol, ''),
    ) as [number, number, number, number, number];
    let [x1, x2, y1, y2] = [0, 0, 0, 0];
    return (x) => {
      const y = b0 * x + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2;
      [x2, x1, y2, y1] = [x1, x, y1, y];
      return y;
    };
  }

  /**
   * A drive that knows integer counts, and time in samples or in milliseconds, with nothing but the numbers of the sheet: its output,
   * in amperes, against the current command of the simulated loop on the same readings.
   */
  function largestDifference(output: string, time: 'sample' | 'ms'): number {
    const loop = new PositionLoop();
    loop.configure(p);
    const [q, tp] = [p.encoderResolution, p.positionDivider / p.currentRate];
    const sample = time === 'sample' ? 1 : tp * 1e3;
    const gain = (symbol: string, per: string) => scaledOf(sheet, symbol, per, output);
    const Kp = gain('K_p', 'count');
    const Ki = gain('K_i', `count·${time}`);
    const Kd = gain('K_d', `count/${time}`);
    const Kvff = gain('K_vff', `count/${time}`);
    const Kaff = gain('K_aff', `count/${time}²`);
    const weight = valueIn(sheet, 'times', 'a', '');
    const filters = ['filter1', 'filter2', 'filter3'].map(filter);
    let [sum, estimate, before] = [0, 0, 0];
    let [largest, peak] = [0, 0];
    for (let k = 0; k < 2000; k++) {
      const t = k * tp;
      const w = 2 * Math.PI * 12;
      const set = 4000 * Math.sin(w * t);
      const [speed, acceleration] = [4000 * w * Math.cos(w * t), -4000 * w * w * Math.sin(w * t)];
      const reading = Math.round(set * 0.98 + 12 * Math.sin(700 * t));
      const command = { position: set * q, speed: speed * q, acceleration: acceleration * q, force: 0 };
      loop.step(command, reading * q, reading * q, 1e9);

      if (k === 0) before = reading;
      const error = set - reading;
      sum += Ki * sample * error;
      estimate += weight * ((reading - before) / sample - estimate);
      before = reading;
      const inTime = sample / tp;
      const [setSpeed, setAcceleration] = [speed / inTime, acceleration / inTime ** 2];
      const force =
        Kp * error +
        sum +
        Kd * (setSpeed - estimate) +
        Kvff * setSpeed +
        Kaff * setAcceleration +
        scaledOf(sheet, 'F_b', '', output);
      const current = filters.reduce((value, each) => each(value), force) * present(amperes[output]);
      largest = Math.max(largest, Math.abs(current - loop.currentCommand));
      peak = Math.max(peak, Math.abs(loop.currentCommand));
    }
    return largest / peak;
  }

  it.each(['N', 'A peak', 'A RMS', '% of i_pk', '% of F_c'])(
    'the loop gives the same current: output in %s',
    (output) => {
      expect(largestDifference(output, 'sample')).toBeLessThan(1e-11);
      expect(largestDifference(output, 'ms')).toBeLessThan(1e-11);
    },
  );

  it('per metre, the gains are those of the scene', () => {
    expect(scaledOf(sheet, 'K_p', 'm', 'N')).toBe(p.Kp);
    expect(scaledOf(sheet, 'K_i', 'm·s', 'N')).toBe(p.Ki);
    expect(scaledOf(sheet, 'K_aff', 'm/s²', 'N')).toBe(p.accelerationFeedforward);
  });

  it('without counts there are no gains per count, and the sheet says why', () => {
    const bare = gainSheet(scene({ encoderResolution: 0 }));
    expect(bare.scaled.map(({ per }) => per)).toEqual(['m', 'm·s', 'm/s', 'm/s', 'm/s²', '']);
    expect(rowsOf(bare).filter(({ unit }) => unit.includes('count'))).toEqual([]);
    expect(bare.assumptions.join(' ')).toContain('no gains per count');
  });
});

describe('the current loop on the sheet', () => {
  it('gives the same voltage, per sample', () => {
    const { parameters } = scene({ motorCount: 3, busVoltage: 800 });
    const sheet = gainSheet(scene({ motorCount: 3, busVoltage: 800 }));
    const loop = new CurrentLoop();
    loop.configure(parameters);
    const gain = valueIn(sheet, 'current-loop', 'K_p,i', 'V/A');
    const perSample = present(
      present(sheet.sections.find(({ id }) => id === 'current-loop')).rows.find(
        ({ label }) => label === 'Integral gain, per sample',
      ),
    ).value as number;
    let integral = 0;
    for (let k = 0; k < 200; k++) {
      const iq = Math.sin(0.1 * k);
      loop.step(2, 0, iq, 0);
      integral += perSample * (2 - iq);
      expect(Math.abs(gain * (2 - iq) + integral - loop.voltageQ)).toBeLessThan(1e-10);
    }
    const resetTime = valueIn(sheet, 'current-loop', 'T_n,i', 'ms') * 1e-3;
    expect((gain / resetTime) * (1 / parameters.currentRate)).toBeCloseTo(perSample, 9);
  });
});

describe('the cascade on the sheet', () => {
  const { parameters: p } = scene();
  const sheet = gainSheet(scene());
  const [Kv, Kvel, Tn] = [
    valueIn(sheet, 'cascade', 'K_v', '1/s'),
    valueIn(sheet, 'cascade', 'K_vel', 'N·s/m'),
    valueIn(sheet, 'cascade', 'T_n', 's'),
  ];

  // (Kv e + ė)·Kvel·(1 + 1/(Tn s)), multiplied out.
  it('has the parallel gains when it is multiplied out', () => {
    expect((Kvel * (Kv + 1 / Tn)) / p.Kp).toBeCloseTo(1, 12);
    expect((Kvel * Kv) / Tn / p.Ki).toBeCloseTo(1, 12);
    expect(Kvel).toBe(p.Kd);
  });

  // 1 (m/min)/mm = 16.667 1/s: following error e = v/K_v, Mechanical Engineers' Handbook vol. 2, control systems, eq. (6).
  it('converts K_v to (m/min)/mm', () => {
    expect(Kv / valueIn(sheet, 'cascade', 'K_v', '(m/min)/mm')).toBeCloseTo(16.667, 3);
  });

  it('says plainly when there is none, and when there is no integral action', () => {
    const cascade = (changes: ParameterChanges) =>
      present(gainSheet(scene(changes)).sections.find(({ id }) => id === 'cascade'));
    expect(cascade({ Ki: 1e11 }).text.join(' ')).toContain('No cascade has these gains');
    expect(cascade({ Ki: 1e11 }).rows.map(({ value }) => value)).toEqual(['none']);
    expect(cascade({ Kd: 0 }).text.join(' ')).toContain('without damping gain');
    expect(present(cascade({ Ki: 0 }).rows.at(-1)).value).toContain('none');
  });
});

describe('a screw drive in terms of its motor', () => {
  const screw = present(SCENES.find(({ driveType }) => driveType === 'screw'));
  const { parameters: p } = screw;
  const sheet = gainSheet(screw);

  it('turns by an angle and gives the torque that belongs to travel and force', () => {
    const angle = 0.7;
    const travel = (angle * p.lead) / (2 * Math.PI);
    // Virtual work: torque · 2π = force · lead.
    const torque = (force: number) => (force * p.lead) / (2 * Math.PI);
    const rotary = (symbol: string, unit: string) => valueIn(sheet, 'rotary', symbol, unit);
    expect((rotary('K_p', 'N·m/rad') * angle) / torque(p.Kp * travel)).toBeCloseTo(1, 12);
    expect((rotary('K_d', 'N·m·s/rad') * angle) / torque(p.Kd * travel)).toBeCloseTo(1, 12);
    expect((rotary('K_aff', 'kg·m²') * angle) / torque(p.accelerationFeedforward * travel)).toBeCloseTo(
      1,
      12,
    );
    expect(rotary('K_t,pk', 'N·m/A')).toBeCloseTo(p.torqueConstant / Math.SQRT2, 12);
    expect(rotary('v_max', 'rev/min')).toBeCloseTo((p.speedLimit / p.lead) * 60, 9);
  });

  it('is not there for a direct drive', () => {
    expect(gainSheet(scene()).sections.some(({ id }) => id === 'rotary')).toBe(false);
  });
});

describe('the formulas', () => {
  const scenes = SCENES.map((each) => ({
    name: each.id,
    sheet: gainSheet({ ...each, parameters: { ...each.parameters, ...FILTERS } }),
  }));

  it.each(scenes)('of $name come to the values beside them when the numbers are worked out', ({ sheet }) => {
    const formulas = rowsOf(sheet).filter(({ how }) => how.includes(' = '));
    expect(formulas.length).toBeGreaterThan(60);
    for (const { how, value, unit } of formulas) {
      const numbers = evaluated(how);
      if (numbers === null) continue;
      const shown = unit === 'ms' ? numbers * 1e3 : numbers;
      expect(Math.abs(shown - (value as number)), how).toBeLessThanOrEqual(2e-5 * Math.abs(value as number));
    }
  });

  it('are nearly all worked out by that check', () => {
    const formulas = rowsOf(at(scenes, 0).sheet).filter(({ how }) => how.includes(' = '));
    const unread = formulas.filter(({ how }) => evaluated(how) === null).map(({ symbol }) => symbol);
    expect(new Set(unread)).toEqual(new Set(['a0', 'b0', 'b1', 'b2', 'a1', 'a2']));
  });

  it('read as a person would write them', () => {
    const sheet = gainSheet(scene({ Kp: 2.27e6, encoderResolution: 1e-9, forceConstant: 60 }));
    const gain = present(sheet.scaled.find(({ symbol, per }) => symbol === 'K_p' && per === 'count'));
    expect(at(gain.forms, 1).how).toBe(
      'K_p in A peak/count = K_p · q / K_f,pk = 2.27·10⁶ N/m · 1 nm / 42.4264 N/A peak = 53.5044 µA peak/count',
    );
  });
});

describe('the sheet as a whole', () => {
  it('is plain data: JSON keeps all of it', () => {
    for (const changes of [FILTERS, { Ki: 0, Kp: 0, Kd: 0 }, { Ki: 1e11, derivativeTime: 0 }]) {
      const sheet = gainSheet(scene(changes));
      expect(JSON.parse(writeGainSheet(sheet))).toEqual(sheet);
      for (const { value } of rowsOf(sheet))
        if (typeof value === 'number') expect(value).toSatisfy(Number.isFinite);
    }
    const whole = everything(scene(FILTERS));
    expect(JSON.parse(writeGainSheet(whole))).toEqual(whole);
  });

  it('shows margins and the figures of a move as they are read', () => {
    const { sections } = everything(scene());
    const text = (id: string, label: string) =>
      present(present(sections.find((section) => section.id === id)).rows.find((row) => row.label === label))
        .text;
    expect(text('margins', 'Phase margin')).toMatch(/^\d\d\.\d° at \d+ Hz$/);
    expect(text('margins', 'Gain margin')).toMatch(/^\d\.\d\d \(\d+\.\d+ dB\) at \d+ Hz$/);
    expect(text('margins', 'Peak sensitivity')).toMatch(/^\d\.\d\d at \d+(\.\d)? Hz$/);
    expect(text('margins', 'Stiffness at standstill')).toBe('unlimited');
    expect(text('move', 'Rise time')).toBe('—');
    expect(text('move', 'Following error, peak')).toMatch(/^\d\.\d\d µm$/);
  });

  it('warns of an unstable loop before anything else, and of a sheet without margins', () => {
    const unstable = scene({ Kp: 1e8, Kd: 1e5 });
    const point = startingPoint(unstable.parameters);
    const sheet = gainSheet(unstable, {
      loops: [{ point, figures: analyse(unstable.parameters, point).figures }],
    });
    expect(sheet.warnings[0]).toContain('UNSTABLE');
    expect(gainSheet(scene()).warnings[0]).toContain('No margins');
  });

  it('warns of what went wrong in the run that the gains were tried in, and says what the drive is based on', () => {
    const move = present(measureRun(scene(), 1).moves[0]);
    const sheet = gainSheet(scene({ continuousCurrent: 0.1 }), {
      move,
      notices: ['overload'],
      trip: { kind: 'oscillation', time: 2, frequency: 410 },
      drive: 'Based on Tubular motor, ironless, 3 values changed',
    });
    const warnings = sheet.warnings.join(' ');
    expect(warnings).toMatch(/tripped in this run\. The drive oscillated at about 410 Hz/);
    expect(warnings).toContain('The overload time is used up');
    expect(warnings).toMatch(/RMS current of this run, .* is above the continuous current of the amplifier/);
    expect(sheet.assumptions.join(' ')).toContain(
      'Drive: Based on Tubular motor, ironless, 3 values changed.',
    );
  });

  it('cautions as the axis asks for', () => {
    const label = (changes: ParameterChanges) => gainSheet(scene(changes)).cautions.join(' ');
    expect(label({})).toMatch(/qualified person.*low limits.*magnet/s);
    expect(label({ inclination: Math.PI / 2 })).toMatch(/drops when the drive trips.*Brake/s);
    expect(label({ lead: 0.01 })).not.toContain('magnet');
  });

  it('is made by the version of the package', () => {
    expect(WAYBENCH_VERSION).toBe(packageJson.version);
  });
});

const inUse = (p: Parameters, tuning: ParameterChanges): ParameterChanges =>
  Object.fromEntries(Object.entries(tuning).filter(([name]) => isInUse(name as ParameterName, p)));

it('lists what has a say, and no more', () => {
  const listed = (changes: ParameterChanges) =>
    present(gainSheet(scene(changes)).sections.find(({ id }) => id === 'gains')).rows.map(
      ({ label }) => label,
    );
  expect(listed({})).not.toEqual(expect.arrayContaining(['Shaper frequency']));
  expect(listed({})).not.toEqual(expect.arrayContaining(['Breakaway speed']));
  expect(listed({ shaper: 'ZV', breakawayCompensation: 2 })).toEqual(
    expect.arrayContaining(['Shaper frequency', 'Shaper damping', 'Breakaway speed', 'Compensation speed']),
  );
});

describe('read back', () => {
  const writers = { JSON: writeGainSheet, CSV: writeGainSheetCsv };

  it.each(Object.entries(writers))('from %s every gain is what it was, to the last bit', (_kind, write) => {
    always(anyScene, 60, (each) => {
      const read = gainsFromSheet(write(gainSheet(each)), defaultParameters());
      // The table has no lines for what has no say.
      expect({ changes: 'changes' in read && inUse(each.parameters, read.changes) }).toEqual({
        changes: inUse(each.parameters, tuningOf(each.parameters)),
      });
    });
  });

  it('from a table that a spreadsheet has saved with semicolons and decimal commas', () => {
    const { parameters } = scene(FILTERS);
    const csv = writeGainSheetCsv(gainSheet(scene(FILTERS)));
    const rows = csv.replace(/^\ufeff/, '').split('\r\n');
    const cells = rows
      .map((row) => [...row.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)])
      .map((row) => row.map(([, quoted, bare]) => (quoted ?? bare ?? '').replaceAll('""', '"')));
    const saved = cells
      .map(([section, quantity, symbol, value, unit, , name]) =>
        [
          section,
          `"${quantity?.replaceAll('"', '""')}"`,
          symbol,
          value?.replace('.', ','),
          unit,
          '',
          name,
        ].join(';'),
      )
      .join('\n');
    expect(gainsFromSheet(saved, defaultParameters())).toEqual({
      changes: inUse(parameters, tuningOf(parameters)),
    });
  });

  it('a part is enough: one gain from a sheet made by hand', () => {
    const json = '{"waybench": "gain sheet", "version": 1, "parameters": {"Kp": 3e6}}';
    expect(gainsFromSheet(json, defaultParameters())).toEqual({ changes: { Kp: 3e6 } });
    expect(gainsFromSheet('parameter,value\nKp,3e6\nfilter1,notch\n', defaultParameters())).toEqual({
      changes: { Kp: 3e6, filter1: 'notch' },
    });
  });

  const json = (parameters: unknown, version: unknown = 1) =>
    JSON.stringify({ waybench: 'gain sheet', version, parameters });

  it.each([
    ['nothing', '', /not a gain sheet.*first line/],
    ['prose', 'Dear colleague,\nhere are the gains', /not a gain sheet.*"Dear colleague,"/],
    ['broken JSON', '{"waybench": "gain sheet",', /not valid JSON/],
    ['a scene', '{"waybench": "scene", "version": 2}', /not a gain sheet file.*"scene"/],
    ['a later version', json({ Kp: 1e6 }, 9), /version 9.*versions up to 1/],
    ['no gains', json(undefined), /parameters: it is missing/],
    ['an empty set', json({}), /no gains/],
    ['a list', json([1, 2]), /parameters: a list/],
    ['a gain out of range', json({ Kp: 1e12 }), /Kp: .*outside 0, or 100 N\/m to/],
    ['a gain that is text', json({ Kp: '2 N/µm' }), /Kp: "2 N\/µm" is not a number/],
    ['what is no gain', json({ payload: 3 }), /"payload" is not a gain/],
    ['a misspelt gain', json({ filter1Dampign: 0.5 }), /Did you mean "filter1Damping"/],
    [
      'a notch above what the rate allows',
      json({ filter1: 'notch', filter1Frequency: 5000 }),
      /filter1Frequency.*half the rate/,
    ],
    ['a table without values', 'section,parameter\nGains,Kp\n', /column value is missing/],
    ['a table with a gain twice', 'value,parameter\n1e6,Kp\n2e6,Kp\n', /Kp: it is in two lines/],
    ['a table with a gain that is no number', 'value,parameter\nmuch,Kp\n', /Kp: "much" is not a number/],
    [
      'a table with a switch that is neither',
      'value,parameter\nyes,observer\n',
      /observer: "yes" is not true or false/,
    ],
  ])('refuses %s, in words that name it', (_what, input, message) => {
    const read = gainsFromSheet(input, defaultParameters());
    expect('problems' in read && problemTexts(read.problems, AS_WRITTEN).join(' ')).toMatch(message);
  });

  it.each([null, undefined, 7, [], {}, '[]', '{}', '\u0000', ','.repeat(5000), '"'.repeat(999)])(
    'takes anything without falling over: %j',
    (input) => expect(gainsFromSheet(input, defaultParameters())).toHaveProperty('problems'),
  );
});

describe('the table for a spreadsheet', () => {
  it('has one header and as many cells in every line (RFC 4180), commas between, no semicolon', () => {
    const csv = writeGainSheetCsv(everything(scene(FILTERS)));
    expect(csv.startsWith('\ufeffsection,quantity,symbol,value,unit,how,parameter\r\n')).toBe(true);
    expect(csv.split(';')).toHaveLength(1);
    const line = /^(?:(?:"(?:[^"]|"")*"|[^",\r\n]*),){6}(?:"(?:[^"]|"")*"|[^",\r\n]*)$/;
    for (const row of csv.slice(1).trimEnd().split('\r\n')) expect(row).toMatch(line);
  });

  it('holds nothing that a spreadsheet would run: a title cannot begin a cell', () => {
    const csv = writeGainSheetCsv(gainSheet({ ...scene(), title: '=1+1' }));
    const cells = csv
      .slice(1)
      .split('\r\n')
      .flatMap((row) => row.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/));
    const text = cells.map((cell) => cell.replace(/^"/, '')).filter((cell) => Number.isNaN(Number(cell)));
    expect(text.filter((cell) => /^[=+\-@\t]/.test(cell))).toEqual([]);
    expect(csv).toContain(': =1+1');
  });
});

describe('what pretuning was asked for', () => {
  const given = scene();
  const loops = (['sliding', 'presliding'] as const).map((friction) => {
    const point = { ...startingPoint(given.parameters), friction };
    return { point, figures: analyse(given.parameters, point).figures };
  });
  const rows = (asked: AskedOfSheet) =>
    present(gainSheet(given, { loops, asked }).sections.find(({ id }) => id === 'asked'));
  const phase = Math.min(...loops.map(({ figures }) => present(figures.phaseMargin).value));

  it('stands beside what is reached at the worse operating point', () => {
    const goal = { kind: 'margins', phase: phase - 0.1, gain: 1.2 } as const;
    const section = rows({ goal, isChanged: false });
    expect(section.text).toEqual(['The gains are as pretuning set them.']);
    const [asked, reached] = section.rows;
    expect(asked).toMatchObject({ label: 'Phase margin, asked for', value: goal.phase, unit: 'rad' });
    expect(reached?.value).toBe(phase);
    expect(reached?.text).not.toContain('MISSED');
  });

  it('is called missed where it is', () => {
    const goal = { kind: 'margins', phase: phase + 0.2, gain: 1.2 } as const;
    const section = rows({ goal, isChanged: true });
    expect(section.text[0]).toContain('changed after pretuning');
    expect(section.rows[1]?.text).toContain('MISSED');
  });

  it('is a peak sensitivity, worse than that of either loop alone', () => {
    const section = rows({ goal: { kind: 'peak sensitivity', limit: 1.6 }, isChanged: false });
    const worst = Math.max(...loops.map(({ figures }) => 1 / figures.modulusMargin.value));
    expect(section.rows.map(({ value }) => value)).toEqual([1.6, worst]);
  });
});

describe('the caution about the first gains', () => {
  const plain = DEFAULT_SCENE.parameters;
  const cascade = gainsInStructure(plain, 'cascade');
  const cautionOf = (changes: ParameterChanges) =>
    present(gainSheet(scene(changes)).cautions.find((text) => text.startsWith('Start with a loop')));
  const figuresOf = (changes: ParameterChanges) => {
    const { parameters } = scene(changes);
    return analyse(parameters, { ...startingPoint(parameters), friction: 'sliding' }).figures;
  };

  it.each<[string, ParameterChanges, string, (p: Parameters) => ParameterChanges]>([
    [
      'PID',
      {},
      'a tenth of K_d, a hundredth of K_p, no K_i, and no force feedforward.',
      ({ Kd, Kp }) => ({ Kd: Kd / 10, Kp: Kp / 100, Ki: 0 }),
    ],
    [
      'cascade',
      cascade,
      'a tenth of K_vel, a tenth of K_v, ten times T_n, and no force feedforward.',
      ({ velocityGain, positionLoopGain, resetTime }) => ({
        velocityGain: velocityGain / 10,
        positionLoopGain: positionLoopGain / 10,
        resetTime: 10 * resetTime,
      }),
    ],
  ])(
    'names the gains of a %s, which make it ten times slower and no less damped',
    (_, changes, words, slower) => {
      expect(cautionOf(changes)).toContain(`ten times slower: ${words}`);
      const before = figuresOf(changes);
      const after = figuresOf({ ...changes, ...slower(scene(changes).parameters) });
      expect(present(after.crossover) / present(before.crossover)).toBeGreaterThan(0.08);
      expect(present(after.crossover) / present(before.crossover)).toBeLessThan(0.12);
      expect(present(after.phaseMargin).value).toBeGreaterThan(present(before.phaseMargin).value);
    },
  );

  it('keeps the force that carries a weight, and leaves the observer for later', () => {
    expect(cautionOf({ inclination: 0.5 })).toContain(
      'no force feedforward but F_b, which carries the weight.',
    );
    expect(cautionOf({ ...cascade, resetTime: 0, observer: true })).toContain(
      'a tenth of K_vel, a tenth of K_v, no observer, and no force feedforward.',
    );
  });
});
