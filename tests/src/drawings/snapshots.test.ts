import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { env } from 'node:process';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import type { Drawing } from '../../../src/plot/drawing.ts';
import { svg } from '../../../src/plot/svg.ts';
import { everyChart, sampleData } from './everyChart.ts';

/*
 * Every chart is compared with a drawing that a person has looked at. The command below keeps the
 * present ones in their place.
 */

const FOLDER = new URL('snapshots/', import.meta.url);
const COMMAND = 'WRITE_DRAWINGS=1 npx vitest run tests/src/drawings/snapshots.test.ts';

const charts = everyChart(sampleData());
const fileName = (name: string) => `${name.replaceAll(' ', '-')}.svg`;

/** A file that a browser shows by itself. */
function fileOf(chart: Drawing): string {
  return svg(chart).text.replace(
    '<svg ',
    '<svg xmlns="http://www.w3.org/2000/svg" style="background: #fff; font-family: sans-serif" ',
  );
}

it.each([...charts])('%s looks as it did', (name, chart) => {
  const drawn = `${fileOf(chart)}\n`;
  const kept = new URL(fileName(name), FOLDER);
  const changed = new URL(fileName(name).replace('.svg', '.changed.svg'), FOLDER);
  rmSync(changed, { force: true });
  if (env.WRITE_DRAWINGS) writeFileSync(kept, drawn);
  const before = existsSync(kept) ? readFileSync(kept, 'utf8') : '';
  if (before !== drawn) writeFileSync(changed, drawn);
  const message = `Now drawn as in ${fileURLToPath(changed)}. Look at both, and if it is meant: ${COMMAND}`;
  expect(drawn === before, message).toBe(true);
});

it('keeps no drawing of a chart that is gone', () => {
  const kept = readdirSync(FOLDER).filter((file) => !file.endsWith('.changed.svg'));
  expect(kept.sort()).toEqual([...charts.keys()].map(fileName).sort());
});
