import { PRESETS } from '../../../scenes/index.ts';
import type { MoveFigures } from '../../../shared/protocol/axis.ts';
import type { CandidateChoice } from '../../../shared/study/candidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { defaultJobValues, type Job, type JobValues } from '../../../shared/study/job.ts';
import type { CandidateOutcome, MoveOutcome } from '../../../shared/study/outcome.ts';
import type { JudgedCandidate } from '../../../shared/verdict/judgement.ts';
import type { CandidateState, StudyState } from '../../../src/studyState/state.ts';
import { sampleAccuracy } from './sampleAccuracy.ts';
import { SAMPLE_DRIVES, type SampleDrive } from './sampleDrives.ts';
import { sampleHeat } from './sampleHeat.ts';
import { sampleSizing } from './sampleSizing.ts';

/** Candidates of the samples: tubular, u-channel, flat, screw. */
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

export function sampleChoice(letter: SampleLetter): CandidateChoice {
  return { preset: SAMPLE_DRIVES[letter]!.preset, motorCount: 1, own: {}, gains: null };
}

/** What simulation might have found of a candidate: made up, plausible for its drive, the same every time. */
export function sampleOutcome(letter: SampleLetter, job: Job = sampleJob()): CandidateOutcome {
  const drive = SAMPLE_DRIVES[letter]!;
  const { values } = job;
  const cycleTime = 2 * (values.moveTime + values.dwell);
  const { title } = candidateScene(job, sampleChoice(letter), PRESETS);
  return {
    moves: moveOutcome(drive, values),
    heat: sampleHeat(title, drive, values, cycleTime),
    accuracy: sampleAccuracy(drive, values, cycleTime),
    peakSensitivity: values.peakSensitivity,
    crossover: drive.crossover,
  };
}

/** The four candidates with everything known of them, as the panes show them and as the verdict takes them. */
export function sampleCandidates(job: Job = sampleJob()): (CandidateState & JudgedCandidate)[] {
  return SAMPLE_LETTERS.map((letter) => {
    const choice = sampleChoice(letter);
    const scene = candidateScene(job, choice, PRESETS);
    return {
      letter,
      choice,
      title: scene.title,
      scene,
      sizing: sampleSizing(scene, SAMPLE_DRIVES[letter]!),
      outcome: sampleOutcome(letter, job),
      progress: null,
      error: null,
    };
  });
}

/** A study with the four candidates simulated. */
export function sampleState(job: Job = sampleJob()): StudyState {
  const candidates = sampleCandidates(job);
  return {
    study: { job, candidates: candidates.map(({ choice }) => choice) },
    units: 'metric',
    candidates,
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
