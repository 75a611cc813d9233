import { expect, it } from 'vitest';
import { sceneById } from '../../../scenes/index.ts';
import { tableMachine } from '../../../shared/core/coggingTable.ts';
import { coggingText } from '../../../src/tuning/coggingNote.ts';

const { parameters } = sceneById('slow-scan-iron');
const coggingTable = {
  from: -0.1,
  spacing: 0.05,
  scanSpeed: 0.005,
  forces: [1, -12, 0, 2, 5],
  machine: tableMachine(parameters),
};

it('says that there is no table', () => {
  expect(coggingText({ parameters })).toBe('No cogging table has been learned.');
});

it('says what the table is and what it was learned from', () => {
  expect(coggingText({ parameters, coggingTable })).toBe(
    '5 forces from −0.100 m to 0.100 m, every 50.0 mm, peak 12.0 N. Learned in a scan at 5.00 mm/s in both directions.',
  );
});

it('says when the machine is no longer the same', () => {
  expect(coggingText({ parameters: { ...parameters, airGap: 8e-4 }, coggingTable })).toMatch(
    /The motor or its field has changed since: learn the table again\.$/,
  );
});
