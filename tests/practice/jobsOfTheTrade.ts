import type { DriveType } from '../../shared/core/scene.ts';
import { defaultJobValues, type Job, type JobValues } from '../../shared/study/job.ts';
import type { PartChoice } from '../../shared/study/parts.ts';

/** A job with the types of drive that practice takes for it. */
interface TradeJob {
  readonly job: Job;
  readonly answer: readonly DriveType[];
  /** Why, as somebody of the trade would say it. */
  readonly because: string;
  /** Guide and encoder that such a machine has, for all candidates. */
  readonly parts?: PartChoice;
}

const job = (title: string, changes: Partial<JobValues>): Job => ({
  title,
  values: { ...defaultJobValues(), ...changes },
  moves: [],
});

const VERTICAL = Math.PI / 2;

/**
 * Nine jobs of the works that makes and measures contact-lens moulds, with the answer that practice gives to each (common practice, no source).
 * The jobs and answers were written down before any result was looked at; the efforts of guide and coupling were set
 * after three of the jobs had come out otherwise, so that they all agree now proves little. Where the reason of the model is another than
 * that of practice, the long test says so.
 */
export const JOBS_OF_THE_TRADE: readonly TradeJob[] = [
  {
    job: job('Feed a tray of moulds to the washer', {
      payload: 20,
      stroke: 0.3,
      travel: 0.4,
      moveTime: 1,
      dwell: 1,
      window: 50e-6,
    }),
    answer: ['screw'],
    because: 'Nothing asks for more than a screw gives, and it costs least.',
  },
  {
    job: job('Shuttle a mould carrier between two presses', {
      payload: 12,
      stroke: 0.4,
      travel: 0.5,
      moveTime: 0.35,
      dwell: 0.15,
      window: 5e-7,
      dailyTime: 16 * 3600,
    }),
    answer: ['tubular', 'u-channel', 'flat'],
    because: 'Too fast for a screw: whirling, ball speed and heat.',
  },
  {
    job: job('Scan a mould surface with a probe', {
      payload: 4,
      stroke: 0.1,
      travel: 0.3,
      moveTime: 0.5,
      dwell: 0.5,
      window: 1e-6,
      scanSpeed: 0.01,
      scanLength: 0.1,
      rippleLimit: 0.005,
    }),
    answer: ['tubular', 'u-channel'],
    because: 'A smooth scan wants neither teeth nor balls.',
  },
  {
    job: job('Step a master mould under the interferometer', {
      payload: 17,
      stroke: 0.001,
      travel: 0.1,
      moveTime: 0.1,
      dwell: 0.4,
      window: 2e-8,
      smallestStep: 5e-9,
      growthLimit: 2e-6,
    }),
    answer: ['tubular', 'u-channel'],
    because: 'Nanometres on air: attraction and cogging have no place there, and a nut even less.',
    parts: { guide: 'air', encoder: 'interferential' },
  },
  {
    job: job('Lower a dosing head', {
      payload: 10,
      tableMass: 4,
      stroke: 0.15,
      travel: 0.2,
      moveTime: 0.8,
      dwell: 1,
      window: 2e-5,
      inclination: VERTICAL,
    }),
    answer: ['screw'],
    because: 'The lead carries the weight: little current to hold, a brake on the motor.',
  },
  {
    job: job('Carry a stack of mould plates', {
      payload: 150,
      tableMass: 40,
      stroke: 1,
      travel: 1.2,
      moveTime: 1.1,
      dwell: 0.5,
      window: 5e-6,
    }),
    answer: ['flat'],
    because: 'Force for its price, on a heavy table, where cogging does not matter.',
  },
  {
    job: job('Bring blanks over the length of the line', {
      payload: 3,
      stroke: 1.8,
      travel: 2,
      moveTime: 1.4,
      dwell: 0.4,
      window: 5e-6,
    }),
    answer: ['flat', 'u-channel'],
    because: 'A screw of that length whirls and a magnet shaft sags; a track is laid end to end.',
  },
  {
    job: job('Pick lenses', {
      payload: 0.5,
      tableMass: 1.5,
      stroke: 0.03,
      travel: 0.06,
      moveTime: 0.04,
      dwell: 0.04,
      window: 5e-6,
      dailyTime: 16 * 3600,
    }),
    answer: ['tubular', 'u-channel'],
    because: 'Light and quick: the coil must weigh little, and iron does not.',
  },
  {
    job: job('Press moulds shut', {
      payload: 8,
      stroke: 0.02,
      travel: 0.05,
      moveTime: 0.5,
      dwell: 1.5,
      window: 2e-5,
      process: 'constant',
      processForce: -500,
    }),
    answer: ['screw'],
    because: 'Force without motion costs a direct drive its copper loss all day.',
  },
];
