import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DRAG_REVERSAL, ironDrag, nutDrag } from '../../../shared/axis/drag.ts';
import { fitFactor } from '../../../shared/axis/field.ts';
import { GRAVITY } from '../../../shared/axis/gravity.ts';
import { breakawayForce, hasDryFriction, slidingFriction } from '../../../shared/axis/guide.ts';
import { designFilter } from '../../../shared/axis/loop/filterSections.ts';
import { motorConstants, motorOffsets, voltageLimit } from '../../../shared/axis/motor.ts';
import {
  coggingTerms,
  interpolationTerms,
  rippleTerms,
  scaleErrorTerms,
} from '../../../shared/axis/periodic.ts';
import { magnetFactor, resistanceFactor } from '../../../shared/axis/temperature.ts';
import { loadSideMass, motorSideMass, translatingMotorMass } from '../../../shared/core/movedMass.ts';
import { FILTER_NUMBERS } from '../../../shared/core/parameters/filters.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { bristleRateCap } from '../../../workers/model/friction/bristles.ts';

const MOTORS = 8;
const WAVES = 8;

const SOURCE = 'axis.c';
const STIFF = 'stiff.py';

/** Stiff solvers of a general numerical library, SciPy. */
export const STIFF_METHODS = ['LSODA', 'Radau'] as const;

interface NativeRun {
  /** Of the processor. */
  readonly seconds: number;
  /** Where the table ended, m. */
  readonly table: number;
}

/** The axis in C, compiled by the compiler of the system. */
export class NativeAxis {
  readonly #folder = mkdtempSync(join(tmpdir(), 'waybench-native-'));
  readonly #sources: string;

  /** @param sources folder of axis.c and stiff.py */
  private constructor(sources: string) {
    this.#sources = sources;
  }

  /** Null where there is no compiler. */
  static compiled(sources: string): NativeAxis | null {
    const axis = new NativeAxis(sources);
    try {
      axis.#compile('axis');
      return axis;
    } catch {
      axis.remove();
      return null;
    }
  }

  /** @param setpoints position, speed, acceleration and force of every position-loop sample, one after the other */
  run(p: Parameters, ticks: number, setpoints: readonly number[]): NativeRun {
    const [seconds = Number.NaN, table = Number.NaN] = numbers(
      execFileSync(join(this.#folder, 'axis'), [this.#written(p, ticks, setpoints)], { encoding: 'utf8' }),
    );
    return { seconds, table };
  }

  /** The same with a stiff solver in place of the fixed steps, in one thread; null where python3 has no SciPy. */
  runStiff(
    method: (typeof STIFF_METHODS)[number],
    p: Parameters,
    ticks: number,
    setpoints: readonly number[],
  ): (NativeRun & { evaluations: number }) | null {
    this.#compile('axis.so', '-shared', '-fPIC');
    const given = [join(this.#folder, 'axis.so'), method, this.#written(p, ticks, setpoints)];
    try {
      execFileSync('python3', ['-c', 'import scipy'], { stdio: 'ignore' });
    } catch {
      return null;
    }
    const printed = execFileSync('python3', [join(this.#sources, STIFF), ...given], {
      encoding: 'utf8',
      env: { ...process.env, OMP_NUM_THREADS: '1', OPENBLAS_NUM_THREADS: '1' },
    });
    const [seconds = Number.NaN, table = Number.NaN, evaluations = Number.NaN] = numbers(printed);
    return { seconds, table, evaluations };
  }

  #compile(name: string, ...options: string[]): void {
    const out = join(this.#folder, name);
    execFileSync('cc', ['-O3', ...options, '-o', out, join(this.#sources, SOURCE), '-lm'], {
      stdio: 'ignore',
    });
  }

  #written(p: Parameters, ticks: number, setpoints: readonly number[]): string {
    const file = join(this.#folder, 'run');
    writeFileSync(file, Float64Array.from([...constants(p, ticks), ...setpoints]));
    return file;
  }

  remove(): void {
    rmSync(this.#folder, { recursive: true, force: true });
  }
}

function numbers(text: string): number[] {
  return text.split(' ').map(Number);
}

/** struct axis of axis.c. */
function constants(p: Parameters, ticks: number): number[] {
  const motor = motorConstants(p);
  const perPitch = Math.PI / motor.polePitch;
  const [m1, m1t, m2] = [motorSideMass(p), translatingMotorMass(p), loadSideMass(p)];
  const omegaBase = 2 * Math.PI * p.baseFrequency;
  const [iron, nut] = [ironDrag(p), nutDrag(p)];
  const coulomb = slidingFriction(p);
  const slope = GRAVITY * Math.sin(p.inclination);
  const period = 1 / p.currentRate;
  const positionPeriod = period * p.positionDivider;
  const bandwidth = 2 * Math.PI * p.currentBandwidth;
  const offsets = motorOffsets(p);
  const perMotor = (of: (x: number) => number) =>
    Array.from({ length: MOTORS }, (_, k) => of(perPitch * (offsets[k] ?? 0)));
  const waves = (list: readonly (readonly [number, number, number])[]) =>
    Array.from(
      { length: WAVES },
      (_, k) => list.filter(([amplitude]) => amplitude > 0)[k] ?? [0, 0, 0],
    ).flat();
  const filters = FILTER_NUMBERS.flatMap((n) => {
    const section = { b0: 1, b1: 0, b2: 0, a1: 0, a2: 0 };
    designFilter(section, p, n, 1 / positionPeriod);
    return [section.b0, section.b1, section.b2, section.a1, section.a2];
  });
  return [
    ...[ticks, period, p.positionDivider, p.motorCount, p.start],
    ...[m1, m1t, m2, p.baseMass * omegaBase ** 2, 2 * p.baseDamping * p.baseMass * omegaBase],
    ...[p.baseMass + (m1t / m1) * (m1 - m1t), m1t / m1, Number(p.base)],
    ...[perPitch, motor.inductance, motor.resistance * resistanceFactor(p.windingStart)],
    motor.flux * magnetFactor(p, p.carrierStart) * fitFactor(p, motor.polePitch),
    ...[p.saturationCurrent > 0 ? p.saturationCurrent ** -2 : 0, Number(p.drive === 'off')],
    ...[iron.dry, iron.viscous, nut.dry, nut.viscous, DRAG_REVERSAL],
    ...[1 / p.linkStiffness, p.linkDamping, p.backlash / 2],
    ...[p.screwRigidity > 0 ? 1 / p.screwRigidity : 0, p.screwSpan],
    ...[coulomb, Math.max(breakawayForce(p) - coulomb, 0), 1 / p.stribeckSpeed],
    ...[hasDryFriction(p) ? p.bristleStiffness : 0, p.bristleDamping, 1 / p.dampingFadeSpeed, p.viscous],
    1 / bristleRateCap(p.bristleStiffness),
    ...[m1t * slope, m2 * slope, p.counterbalance, p.travelMin - 3e-3, p.travelMax + 3e-3],
    ...[motor.inductance / p.motorCount, (bandwidth * motor.inductance) / p.motorCount],
    ...[(bandwidth * motor.resistance) / p.motorCount, motor.flux, voltageLimit(p)],
    ...[p.Kp, p.Ki, p.Kd, positionPeriod / (p.derivativeTime + positionPeriod)],
    ...[p.speedFeedforward, p.accelerationFeedforward, p.forceBias, 1 / motor.forcePerAmp, p.peakCurrent],
    ...[p.encoderResolution, p.encoderNoise, p.seed, Number(p.encoderSide === 'motor')],
    ...perMotor(Math.cos),
    ...perMotor(Math.sin),
    ...waves(rippleTerms(p).map(({ amplitude, order, phase }) => [amplitude, order * perPitch, phase])),
    ...waves(
      coggingTerms(p).map(({ amplitude, period, phase }) => [amplitude, (2 * Math.PI) / period, phase]),
    ),
    ...waves(
      [...interpolationTerms(p), ...scaleErrorTerms(p)].map(({ amplitude, period }) => [
        amplitude,
        (2 * Math.PI) / period,
        0,
      ]),
    ),
    ...filters,
  ];
}
