import { expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import type { Job } from '../../../shared/study/job.ts';
import { decisiveRows } from '../../../shared/verdict/decisive.ts';
import { judge } from '../../../shared/verdict/verdict.ts';
import { recordedCandidates, recordedDrives, recordedJob } from '../study/recordedStudy.ts';

const job = recordedJob();
const candidates = recordedCandidates(job);
const letters = candidates.map(({ letter }) => letter);
const judged = judge(job, candidates);
const rows = decisiveRows(judged, letters);

it('tells cost, time, heat, and what the job asks of a scan or a step, or else the reserve', () => {
  const told = (changes: Partial<Job['values']>) => {
    const other = { ...job, values: { ...job.values, ...changes } };
    return decisiveRows(judge(other, candidates), letters).map(({ row }) => row.id);
  };
  expect(told({})).toEqual(['total', 'inPlace', 'winding', 'ripple']);
  expect(told({ rippleLimit: 0, smallestStep: 5e-9 })).toEqual(['total', 'inPlace', 'winding', 'increment']);
  expect(told({ rippleLimit: 0 })).toEqual(['total', 'inPlace', 'winding', 'utilisation']);
});

it('says which is lowest of those that do the job, and which would be lower but does not', () => {
  for (const { row, sentence } of rows) {
    const does = row.cells.flatMap(({ value }, k) =>
      at(judged.shortfalls, k).length === 0 ? [value ?? Infinity] : [],
    );
    const lowest = row.cells.findIndex(({ value }) => value === Math.min(...does));
    expect(sentence).toContain(`${at(letters, lowest)}, ${at(row.cells, lowest).text}.`);
    row.cells.forEach(({ value }, k) => {
      const isLower = value !== null && value < Math.min(...does);
      expect(new RegExp(`\\b${at(letters, k)}\\b[^.]* (is|are) lower`).test(sentence)).toBe(isLower);
    });
  }
  expect(present(rows[0]).sentence).toMatch(
    /^Lowest of those that do the job: A, \d+\. D is lower but does not do it\.$/,
  );
});

it('says so where one alone does the job, or none', () => {
  const { A, D } = recordedDrives(job);
  expect(at(decisiveRows(judge(job, [A, D]), ['A', 'D']), 1).sentence).toMatch(
    /^A, the only one that does the job: /,
  );
  expect(at(decisiveRows(judge(job, [D]), ['D']), 0).sentence).toMatch(
    /^Lowest: D, \d+; none of the drives does the job\.$/,
  );
});
