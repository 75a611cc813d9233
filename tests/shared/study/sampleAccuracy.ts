import type {
  Accuracy,
  DisturbanceTest,
  EnergyFlow,
  IncrementTest,
  PositioningTest,
  RippleTest,
  StaircaseTest,
} from '../../../shared/protocol/accuracy.ts';
import type { JobValues } from '../../../shared/study/job.ts';
import { evaluatePositioning } from '../../../workers/accuracy/iso230.ts';
import { seeded } from '../../workers/command/seeded.ts';
import type { SampleDrive } from './sampleDrives.ts';

const TARGETS = 5;
const APPROACHES = 5;

export function sampleAccuracy(drive: SampleDrive, job: JobValues, cycleTime: number): Accuracy {
  const states = drive.wear > 0 ? (['cold', 'warm', 'worn'] as const) : (['cold', 'warm'] as const);
  return {
    positioning: states.map((state) => positioning(drive, job, state)),
    staircase: staircase(drive),
    ripple: ripple(drive, job),
    increment: increment(drive),
    disturbance: disturbance(drive, job),
    energy: energyFlow(drive, cycleTime),
  };
}

function positioning(
  drive: SampleDrive,
  { travel }: JobValues,
  state: PositioningTest['state'],
): PositioningTest {
  const chance = seeded(7);
  /** Between −1 and 1, in the shape of a bell. */
  const scatter = () => drive.scatter * 2 * (chance() + chance() + chance() - 1.5);
  // Not evenly spaced, so that no periodic error hides between the targets.
  const targets = Array.from(
    { length: TARGETS },
    (_, k) => travel * (-0.5 + (k + 0.5 + 0.2 * (chance() - 0.5)) / TARGETS),
  );
  const lost = drive.lostMotion + (state === 'worn' ? drive.wear : 0);
  const mean = (x: number) =>
    drive.slope * (x / travel) +
    drive.wave * Math.sin((9 * x) / travel) +
    (state === 'cold' ? 0 : drive.warm * (0.5 + x / travel));
  const approaches = (side: 1 | -1) =>
    targets.map((x) => Array.from({ length: APPROACHES }, () => mean(x) - (side * lost) / 2 + scatter()));
  const [up, down] = [approaches(1), approaches(-1)];
  return { state, targets, up, down, figures: evaluatePositioning(up, down) };
}

function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function range(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

function staircase({ noise, lostMotion }: SampleDrive): StaircaseTest {
  const [step, stairs, perStair, dwell] = [1e-8, 5, 60, 0.3];
  const chance = seeded(3);
  const time: number[] = [];
  const set: number[] = [];
  const tool: number[] = [];
  const sticking = Math.min(lostMotion / 10, 1e-8);
  let stood = 0;
  for (let stair = 0; stair <= 2 * stairs; stair++) {
    const height = step * (stair <= stairs ? stair : 2 * stairs - stair);
    for (let k = 0; k < perStair; k++) {
      stood += (height - stood) * 0.12;
      time.push((stair + k / perStair) * dwell);
      set.push(height);
      tool.push(
        stood + noise * 2 * (chance() + chance() - 1) + (stair > stairs ? sticking / 4 : -sticking / 4),
      );
    }
  }
  return { step, time, set, tool, largestError: sticking / 4 + noise / 3, noise };
}

function ripple({ lines }: SampleDrive, { scanSpeed, scanLength }: JobValues): RippleTest {
  const count = 1500;
  const distance = Array.from({ length: count }, (_, k) => (scanLength * k) / (count - 1));
  const deviation = distance.map((x) =>
    lines.reduce(
      (sum, line, k) => sum + line.amplitude * Math.sin((2 * Math.PI * x) / line.period + 0.7 * k),
      0,
    ),
  );
  const rows = 400;
  const shortest = 4e-6;
  const period = Array.from(
    { length: rows },
    (_, k) => shortest * (scanLength / shortest) ** (k / (rows - 1)),
  );
  const width = 1.02;
  const amplitude = period.map((each) =>
    lines.reduce(
      (sum, line) =>
        sum + line.amplitude * Math.exp(-((Math.log(each / line.period) / Math.log(width)) ** 2)),
      2e-5 * (each / 1e-3) ** -0.2,
    ),
  );
  return {
    speed: scanSpeed,
    length: scanLength,
    peak: range(deviation) / 2,
    rms: Math.sqrt(average(deviation.map((value) => value ** 2))),
    distance,
    deviation,
    period,
    amplitude,
    lines: [...lines].sort((a, b) => b.amplitude - a.amplitude),
  };
}

function increment({ smallestStep, noise, lostMotion }: SampleDrive): IncrementTest {
  const steps = [1e-9, 2e-9, 5e-9, 1e-8, 2e-8, 5e-8, 1e-7];
  const tried = steps.map((step) => {
    const made = smallestStep !== null && step >= smallestStep;
    return {
      step,
      mean: made ? step * 0.98 : step * Math.max(0.2, 0.7 - lostMotion / 1e-5),
      spread: noise * 0.6,
      made,
    };
  });
  return { smallest: smallestStep, tried };
}

function disturbance({ stiffness, recovery }: SampleDrive, { processForce }: JobValues): DisturbanceTest {
  const force = Math.abs(processForce) || 20;
  const peak = force / stiffness;
  const count = 400;
  const span = 3 * recovery;
  const time = Array.from({ length: count }, (_, k) => (span * k) / (count - 1));
  const rise = recovery / 16;
  // The height of t/τ e^(1 − t/τ) is 1, at t = τ.
  const error = time.map((t) => -peak * (t / rise) * Math.exp(1 - t / rise) * Math.cos(t / rise / 4 - 0.25));
  return { force, peak, stiffness, recovery, time, error };
}

function energyFlow({ energy }: SampleDrive, cycleTime: number): EnergyFlow {
  const { returned, copper, iron, guide, nut, other } = energy;
  const work = 0;
  const stored = 0.02;
  const drawn = returned + copper + iron + guide + nut + other + work + stored;
  return { cycleTime, drawn, returned, copper, iron, guide, nut, other, work, stored };
}
