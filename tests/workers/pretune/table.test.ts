import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { SCENES, sceneById } from '../../../scenes/index.ts';
import { ranged } from '../../../shared/core/format.ts';
import { ROOT } from '../../tools/sources.mjs';
import { committedRows, expectSameRow, freshTextbook, quantity, type Row } from './table.ts';

const rows = [...committedRows().values()];
const rowOf = (id: string): Row => {
  const row = committedRows().get(id);
  if (!row) throw new Error(`no row ${id}`);
  return row;
};

const settling = (row: Row) => ({
  textbook: quantity(row.settlingTextbook),
  pretuned: quantity(row.settlingPretuned),
});
const error = (row: Row) => ({
  textbook: quantity(row.errorTextbook),
  pretuned: quantity(row.errorPretuned),
});

describe('the table of pretuned against textbook', () => {
  it('has every scene, in the order of the shelf', () => {
    expect(rows.map(({ scene }) => scene)).toEqual(SCENES.map(({ id }) => id));
  });

  it('has the textbook that a fresh run finds; the long tests run all of it', () => {
    const { rule, errorTextbook } = rowOf('mould-shuttle');
    const fresh = freshTextbook(sceneById('mould-shuttle'));
    expect(fresh.label).toBe(rule);
    expect(ranged(fresh.rmsError, 'm')).toBe(errorTextbook);
  });

  it.each([
    ['settlingPretuned', '21.3 ms', '22.0 ms'],
    ['errorPretuned', '120 nm', '122 nm'],
    ['errorPretuned', '120 nm', '120 µm'],
    ['settlingTextbook', 'not settled', '21.3 ms'],
    ['sensitivities', '1.501, 1.499', '1.501, 1.479'],
    ['rule', 'lead ratios', 'symmetrical optimum'],
  ] as const)('would be found wrong: %s %s instead of %s', (column, cell, instead) => {
    const row = { ...rowOf('mould-shuttle'), [column]: cell };
    expect(() => expectSameRow(row, row)).not.toThrow();
    expect(() => expectSameRow({ ...row, [column]: instead }, row)).toThrow();
  });
});

describe('what the README says of it', () => {
  const readme = readFileSync(join(ROOT, 'README.md'), 'utf8').replace(/\s+/g, ' ');

  /** The parts of a sentence that a pattern finds; fails if there is no such sentence. */
  function said(pattern: RegExp): string[] {
    const found = pattern.exec(readme);
    expect(found, `the README says nothing like ${pattern}`).not.toBeNull();
    return found?.slice(1) ?? [];
  }

  const COUNTS = [
    'no',
    'one',
    'two',
    'three',
    'four',
    'five',
    'six',
    'seven',
    'eight',
    'nine',
    'ten',
    'eleven',
  ];
  const count = (word = '') => COUNTS.indexOf(word);
  const SHARES: Readonly<Record<string, number>> = { half: 2, third: 3, sixth: 6, eleventh: 11 };

  const moving = rows.filter((row) => row.window !== '');
  const scanning = rows.filter((row) => row.window === '');
  const sooner = moving.filter((row) => settling(row).pretuned < settling(row).textbook);

  it('counts the scenes', () => {
    const [scenes] = said(/table of all (\w+) scenes/);
    expect(count(scenes)).toBe(rows.length);
    const [settledSooner] = said(/In (\w+) scenes that move and stop, pretuning settles sooner/);
    expect(count(settledSooner)).toBe(sooner.length);
    const [scans] = said(/The (\w+) slow scans are judged by their RMS following error/);
    expect(count(scans)).toBe(scanning.length);
  });

  it('states the settling times', () => {
    const atOnce = sooner.filter((row) => settling(row).pretuned === 0);
    const [scenes, least, most] = said(
      /In (\w+) the axis is inside its window when the command ends, where the textbook takes (\d+) to (\d+) ms/,
    );
    expect(count(scenes)).toBe(atOnce.length);
    const times = atOnce.map((row) => settling(row).textbook * 1e3);
    expect(Math.round(Math.min(...times))).toBe(Number(least));
    expect(Math.round(Math.max(...times))).toBe(Number(most));

    const [late] = said(/on the soft coil mounting it takes (\d+) ms where the textbook does not settle/);
    const soft = settling(rowOf('soft-coil-mounting'));
    expect(soft.textbook).toBe(Number.POSITIVE_INFINITY);
    expect(Math.round(soft.pretuned * 1e3)).toBe(Number(late));
    expect(atOnce.length + 1).toBe(sooner.length);
  });

  it('states by how much the following error falls', () => {
    const [least, most] = said(/error falls to a (\w+) at least, to an? (\w+) at best/);
    const factors = sooner.map((row) => error(row).textbook / error(row).pretuned);
    expect(Math.min(...factors)).toBeGreaterThanOrEqual(SHARES[least ?? ''] ?? Number.NaN);
    expect(Math.round(Math.max(...factors))).toBe(SHARES[most ?? '']);
  });

  it('states the staircase', () => {
    const [before, after] = said(/the error falls from ([\d.]+) to ([\d.]+) nm/);
    const stairs = rowOf('nanometre-staircase');
    expect([stairs.errorTextbook, stairs.errorPretuned]).toEqual([`${before} nm`, `${after} nm`]);
    expect(settling(stairs)).toEqual({ textbook: 0, pretuned: 0 });
  });

  it('states the scans', () => {
    const [share, from, to, ironShare, ironFrom, ironTo] = said(
      /error falls by a (\w+) without iron, from ([\d.]+) to ([\d.]+) nm, and by (\w+) where there is cogging[^.]*, from ([\d.]+) to ([\d.]+) nm/,
    );
    for (const [id, by, before, after] of [
      ['slow-scan-coreless', share, from, to],
      ['slow-scan-iron', ironShare, ironFrom, ironTo],
    ] as const) {
      const { textbook, pretuned } = error(rowOf(id));
      expect((textbook * 1e9).toPrecision(before?.replace('.', '').length)).toBe(before);
      expect((pretuned * 1e9).toPrecision(after?.replace('.', '').length)).toBe(after);
      expect(Math.round(1 / (1 - pretuned / textbook))).toBe(SHARES[by ?? '']);
    }
  });
});
