import { KITS } from '../../scenes/index.ts';
import type { MoveFigures } from '../../shared/protocol.ts';
import { defaultJobValues, type Job, type JobValues } from '../../shared/study/job.ts';
import type { LaneChoice } from '../../shared/study/lane.ts';
import { laneScene } from '../../shared/study/laneScene.ts';
import type { LaneOutcome, MoveOutcome } from '../../shared/study/outcome.ts';
import type { JudgedLane } from '../../shared/study/verdict.ts';
import type { LaneState, StudyState } from '../../src/study/state.ts';
import { sampleAccuracy } from './sampleAccuracy.ts';
import { SAMPLE_DRIVES, type SampleDrive } from './sampleDrives.ts';
import { sampleHeat } from './sampleHeat.ts';
import { sampleSizing } from './sampleSizing.ts';

/** Lanes of the samples: tubular, u-channel, flat, screw. */
export type SampleLetter = 'A' | 'B' | 'C' | 'D';
export const SAMPLE_LETTERS: readonly SampleLetter[] = ['A', 'B', 'C', 'D'];

/** The job of a works that measures contact-lens moulds, with whatever a test wants otherwise. */
export function sampleJob(changes: Partial<JobValues> = {}): Job {
  return {
    title: 'Mould under the measuring head',
    values: { ...defaultJobValues(), ...changes },
    moves: [],
  };
}

export function sampleChoice(letter: SampleLetter): LaneChoice {
  return { kit: SAMPLE_DRIVES[letter]!.kit, motorCount: 1, own: {}, gains: null };
}

/** What simulation might have found of a lane: made up, plausible for its drive, the same every time. */
export function sampleOutcome(letter: SampleLetter, job: Job = sampleJob()): LaneOutcome {
  const drive = SAMPLE_DRIVES[letter]!;
  const { values } = job;
  const cycleTime = 2 * (values.moveTime + values.dwell);
  const { title } = laneScene(job, sampleChoice(letter), KITS);
  return {
    moves: moveOutcome(drive, values),
    heat: sampleHeat(title, drive, values, cycleTime),
    accuracy: sampleAccuracy(drive, values, cycleTime),
    peakSensitivity: values.peakSensitivity,
    crossover: drive.crossover,
  };
}

/** The four lanes with everything known of them, as the panes show them and as the verdict takes them. */
export function sampleLanes(job: Job = sampleJob()): (LaneState & JudgedLane)[] {
  return SAMPLE_LETTERS.map((letter) => {
    const choice = sampleChoice(letter);
    const scene = laneScene(job, choice, KITS);
    return {
      letter,
      choice,
      title: scene.title,
      scene,
      sizing: sampleSizing(scene, SAMPLE_DRIVES[letter]!),
      outcome: sampleOutcome(letter, job),
      progress: null,
      trouble: null,
    };
  });
}

/** A study with the four lanes simulated. */
export function sampleState(job: Job = sampleJob()): StudyState {
  const lanes = sampleLanes(job);
  return {
    study: { job, lanes: lanes.map(({ choice }) => choice) },
    units: 'metric',
    lanes,
    isRunning: false,
  };
}

function moveOutcome(drive: SampleDrive, { moveTime, dwell }: JobValues): MoveOutcome {
  const figures = {
    settlingTime: drive.settling,
    peakError: drive.peakError,
    rmsError: drive.peakError / 4,
    peakForce: drive.peakForce,
    rmsForce: drive.rmsForce,
    peakCurrent: drive.peakCurrent,
    rmsCurrent: drive.rmsCurrent,
    currentHeadroom: 0.7,
    voltageHeadroom: 0.5,
  };
  const move = (index: number): MoveFigures => ({
    ...figures,
    index,
    duration: moveTime + dwell,
    riseTime: null,
    overshoot: drive.peakError / 20,
    velocityRipplePeak: 2 * drive.lines[0]!.amplitude,
    velocityRippleRms: drive.lines[0]!.amplitude / 2,
    copperLoss: drive.energy.copper / (2 * (moveTime + dwell)),
  });
  return { trip: null, ...figures, moves: [move(0), move(1)] };
}
