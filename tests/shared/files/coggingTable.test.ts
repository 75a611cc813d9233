import { describe, expect, it } from 'vitest';
import { SHELF, sceneById } from '../../../scenes/index.ts';
import { coggingWarnings } from '../../../shared/axis/coggingWarnings.ts';
import { type CoggingTable, tableMachine } from '../../../shared/core/coggingTable.ts';
import { problemText } from '../../../shared/core/problem.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { AS_WRITTEN, sentenceText } from '../../../shared/core/sentence.ts';
import { readScene, writeScene } from '../../../shared/files/sceneFile.ts';
import { readLink, writeLink } from '../../../shared/files/sceneLink.ts';
import { coggingTableCells } from '../../../shared/sheet/coggingCells.ts';
import { gainSheet } from '../../../shared/sheet/gainSheet.ts';

const bare = sceneById('slow-scan-iron');
const coggingTable: CoggingTable = {
  from: -0.012,
  spacing: 0.00025,
  scanSpeed: 0.005,
  forces: [1.25, -3, 0, 1e-3],
  machine: tableMachine(bare.parameters),
};
const scene: Scene = { ...bare, coggingTable, parameters: { ...bare.parameters, coggingCompensation: true } };

describe('a learned table is kept', () => {
  it('in the scene file', () => expect(readScene(writeScene(scene), SHELF)).toEqual({ scene }));
  it('in the link', () => expect(readLink(writeLink(scene, SHELF), SHELF)).toEqual({ scene }));
  it('as CSV, one line for each place', () => {
    expect(coggingTableCells(coggingTable).slice(0, 3)).toEqual([
      ['encoder position in m', 'force in N'],
      ['-0.012', '1.25'],
      ['-0.01175', '-3'],
    ]);
  });
  it('on the gain sheet, with size and peak', () => {
    const rows = gainSheet(scene).sections.find(({ id }) => id === 'cogging')?.rows ?? [];
    const value = (label: string) => rows.find((row) => row.label === label)?.value;
    expect(value('Forces in the table')).toBe(4);
    expect(value('Peak force')).toBe(3);
    expect(value('Learned on this machine')).toBe('yes');
  });
});

it.each([
  [{ spacing: 0 }, /^coggingTable\.spacing: .* above 0\. Learn the table again/],
  [{ forces: [1] }, /^coggingTable\.forces: .* 2 to 4000 forces/],
  [{ forces: [1, 'x'] }, /^coggingTable\.forces\[1\]: "x" is not a force in N/],
  [{ machine: { cogging1: 'no' } }, /^coggingTable\.machine: /],
])('a table with %j is refused', (wrong, message) => {
  const read = readScene(
    { ...JSON.parse(writeScene(scene)), coggingTable: { ...coggingTable, ...wrong } },
    SHELF,
  );
  if (!('problems' in read)) throw new Error('was read');
  expect(problemText(read.problems[0]!, AS_WRITTEN)).toMatch(message);
});

describe('the warning', () => {
  const warned = (changed: Partial<Scene>) =>
    coggingWarnings({ ...scene, ...changed }).map((each) =>
      sentenceText(each, { names: 'name', units: 'metric' }),
    );

  it('is silent on the machine of the table', () => expect(warned({})).toEqual([]));

  it('says that the table no longer belongs to the machine', () => {
    const parameters = { ...scene.parameters, airGap: 8e-4, cogging1: 11 };
    expect(warned({ parameters })[0]).toMatch(
      /^The cogging table no longer belongs to this machine: airGap and 1 more changed/,
    );
  });

  it('says that there is no table', () => {
    const { coggingTable: _, ...without } = scene;
    expect(coggingWarnings(without)).toHaveLength(1);
  });
});
