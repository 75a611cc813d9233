import { writeFileSync } from 'node:fs';
import { env } from 'node:process';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { committedRows, expectSameRow, freshRow, HEAD, type Row, rowText, TABLE } from './table.ts';
import { jobThreads } from './threads.ts';

const rows: Row[] = [];
let threads: Awaited<ReturnType<typeof jobThreads>>;

beforeAll(async () => {
  threads = await jobThreads(2);
});

afterAll(() => {
  threads.end();
  if (env.WRITE_TABLE) writeFileSync(TABLE, `${HEAD}${rows.map(rowText).join('\n')}\n`);
});

it.each(SCENES)(
  '$id: better at the same peak sensitivity, proven, and as the table has it',
  async (scene) => {
    const row = await freshRow(scene, threads.workers);
    rows.push(row);
    if (!env.WRITE_TABLE) expectSameRow(row, committedRows().get(row.scene));
  },
);

it('the table has no other rows', () => {
  if (!env.WRITE_TABLE) expect([...committedRows().keys()]).toEqual(rows.map(({ scene }) => scene));
});
