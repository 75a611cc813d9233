import { hostname } from 'node:os';
import { describe, expect, it } from 'vitest';
import { changeText, readHistory, readmeTable, shownTable } from '../benchmarks/history.mjs';

const history = readHistory();

describe('the history of the benchmarks', () => {
  it('says of every run when, where and with what it was made, and names no host', () => {
    expect(history).not.toEqual([]);
    for (const { date, machine, versions, figures } of history) {
      expect(date).toMatch(/^20\d\d-\d\d-\d\d$/);
      expect(Object.keys(machine)).toEqual(['cores', 'processor', 'load']);
      expect(machine.cores).toBeGreaterThan(0);
      expect(machine.processor).not.toBe('');
      expect(machine.processor).not.toContain(hostname());
      expect(machine.load).toBeGreaterThanOrEqual(0);
      expect(Object.keys(versions)).toEqual(['node', 'chromium', 'product', 'model']);
      expect(Object.values(figures).filter((value) => !(Number.isFinite(value) && value >= 0))).toEqual([]);
    }
  });

  it('is in the order of its dates', () => {
    const dates = history.map(({ date }) => date);
    expect(dates).toEqual(dates.toSorted());
  });

  it('ends with the run of which the README has the table', () => {
    expect(shownTable()).toBe(readmeTable(history.at(-1)!));
  });
});

describe('the table of a run', () => {
  const line = {
    date: '2026-01-02',
    machine: { cores: 2, processor: 'Some processor', load: 0 },
    versions: { node: '20', chromium: '150', product: '1', model: 1 },
    figures: { 'batch over C: a': 0.25, 'batch over C: b': 1, pretuning: 12.34 },
    missing: { 'LSODA over C': 'no SciPy on that system' },
  };

  it('sums up scenes by their geometric mean, and says why a figure is missing', () => {
    const table = readmeTable(line);
    expect(table).toMatch(/Batch engine .* \| 0\.5 × \(0\.25 to 1 in 2 scenes\) +\|/);
    expect(table).toMatch(/Pretuning .* \| 12 s +\|/);
    expect(table).toMatch(/LSODA .* \| no SciPy on that system +\|/);
    expect(table).toMatch(/Radau .* \| not measured +\|/);
    expect(table).toMatch(/2026-01-02; Some processor, 2 threads, load average 0 before/);
  });
});

it.each([
  [1.2, 1, 'more', 'was 1: 20 % better'],
  [0.8, 1, 'more', 'was 1: 20 % worse'],
  [1.2, 1, 'less', 'was 1: 20 % worse'],
  [3, 0, 'less', 'was 0: worse'],
  [1.01, 1, 'less', 'as before'],
  [1, undefined, 'less', 'not recorded before'],
] as const)('a figure of %d after %s, of which %s is better: %s', (value, was, better, text) => {
  expect(changeText(value, was, better)).toBe(text);
});
