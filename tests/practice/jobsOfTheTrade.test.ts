import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../scenes/index.ts';
import { at } from '../../shared/core/at.ts';
import type { DriveType } from '../../shared/core/scene.ts';
import { sizedDrives } from './drivesThatPass.ts';
import { JOBS_OF_THE_TRADE } from './jobsOfTheTrade.ts';

/*
 * What the sizing alone says of the nine jobs: who is ruled out, and by what. Which of those that are left is taken is the affair of simulation
 * and cost, and of the long test.
 */

function sized(index: number) {
  const { job, parts } = at(JOBS_OF_THE_TRADE, index);
  return sizedDrives(job, parts, PRESETS).map(({ scene, sizing }) => ({ type: scene.driveType, ...sizing }));
}

describe.each(JOBS_OF_THE_TRADE.map(({ job, answer }, index) => [job.title, answer, index] as const))(
  '%s',
  (_, answer, index) => {
    it('is within the limits of every drive that practice takes for it', () => {
      for (const { type, passes, reasons } of sized(index)) {
        if (answer.includes(type)) expect(reasons, type).toEqual([]);
        if (answer.includes(type)) expect(passes).toBe(true);
      }
    });
  },
);

const RULED_OUT: readonly (readonly [title: string, type: DriveType, reason: RegExp])[] = [
  ['Shuttle a mould carrier between two presses', 'screw', /whirling/],
  ['Carry a stack of mould plates', 'screw', /whirling/],
  ['Carry a stack of mould plates', 'tubular', /magnet shaft sags/],
  ['Bring blanks over the length of the line', 'screw', /diameters long/],
  ['Bring blanks over the length of the line', 'tubular', /magnet shaft sags/],
  ['Pick lenses', 'screw', /the motors give .* at the peak current/],
];

it.each(RULED_OUT)('%s rules out the %s', (title, type, reason) => {
  const index = JOBS_OF_THE_TRADE.findIndex(({ job }) => job.title === title);
  const found = sized(index).find((each) => each.type === type);
  expect(found?.passes).toBe(false);
  expect(found?.reasons.join(' ')).toMatch(reason);
});
