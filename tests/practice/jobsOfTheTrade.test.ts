import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../scenes/index.ts';
import { at } from '../../shared/core/at.ts';
import { DRIVE_TYPES, type DriveType } from '../../shared/core/scene.ts';
import { chooseCandidates } from '../../shared/sizing/chooseCandidates.ts';
import { sizeCandidate } from '../../shared/sizing/sizeCandidate.ts';
import { candidateScene } from '../../shared/study/candidateScene.ts';
import { JOBS_OF_THE_TRADE } from './jobsOfTheTrade.ts';

/*
 * What the sizing alone says of the nine jobs: who is ruled out, and by what. Which of those that are left is taken is the affair of simulation
 * and cost. Simulated to the verdict from the command line, each drive tuned to a peak sensitivity of 1.5, with a saving of 50 that counts, all nine came out as practice has
 * them: screw for the feed, the dosing head and the press; tubular for the shuttle, the scan and the steps; flat for the stack; U-channel for
 * the line and for picking. The nearest rivals in total cost: flat within 3 % of U-channel on the line, tubular on picking, U-channel on the
 * stack; U-channel within 6 % of tubular on the steps. The screw loses the scan by its encoder on the motor alone: with a scale it would do it, and cost least.
 */

function sized(index: number) {
  const { job, parts } = at(JOBS_OF_THE_TRADE, index);
  return chooseCandidates(job, PRESETS).map((choice, place) => {
    const scene = candidateScene(job, parts ? { ...choice, parts } : choice, PRESETS);
    return { type: at(DRIVE_TYPES, place), ...sizeCandidate(job, scene) };
  });
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
