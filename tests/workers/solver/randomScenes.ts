import { PRESETS } from '../../../scenes/index.ts';
import { viscousDrag } from '../../../shared/axis/drag.ts';
import { holdingForce } from '../../../shared/axis/gravity.ts';
import { gainChanges } from '../../../shared/axis/loop/loopGains.ts';
import { startLoop } from '../../../shared/axis/loop/startGains.ts';
import { at, present } from '../../../shared/core/at.ts';
import { checkParameters } from '../../../shared/core/check.ts';
import { crossChecks } from '../../../shared/core/crossChecks.ts';
import { movedMass } from '../../../shared/core/movedMass.ts';
import { defaultParameters, type ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { maxMotors, presetParameters } from '../../../shared/core/preset.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { seeded } from '../../../shared/core/seeded.ts';
import { sceneOf } from '../model/sceneOf.ts';

/** Legal scenes drawn at random about the presets: machine, load, loop, program and process. The same number gives the same scene. */
export function randomScene(number: number): Scene {
  const random = seeded(number);
  for (;;) {
    const scene = drawn(random);
    if (scene !== null) return scene;
  }
}

function drawn(random: () => number): Scene | null {
  const among = <T>(list: readonly T[]) => at(list, Math.floor(random() * list.length));
  const between = (low: number, high: number) => low + (high - low) * random();
  const decades = (low: number, high: number) => low * (high / low) ** random();
  /** 0 but for this share of the scenes. */
  const sometimes = (share: number, value: number) => (random() < share ? value : 0);

  const preset = present(PRESETS[among(Object.keys(PRESETS))]);
  const motorCount = Math.min(among([1, 1, 2, 4]), maxMotors(preset));
  const base = { ...defaultParameters(), ...presetParameters(preset, motorCount), motorCount };
  const breakaway = between(1, 1.8);
  const frictionCoefficient = sometimes(0.8, decades(1e-3, 0.02));
  const sealFriction = sometimes(0.7, decades(0.3, 30));
  const machine: ParameterChanges = {
    payload: between(0, 20),
    tableMass: base.tableMass * decades(0.5, 2),
    linkStiffness: base.linkStiffness * decades(0.1, 3),
    linkDamping: base.linkDamping * decades(0.3, 3),
    backlash: sometimes(0.3, decades(1e-7, 2e-5)),
    screwRigidity: preset.driveType === 'screw' ? sometimes(0.5, decades(1e7, 1e8)) : 0,
    frictionCoefficient,
    stictionCoefficient: frictionCoefficient * breakaway,
    sealFriction,
    sealStiction: sealFriction * breakaway,
    stribeckSpeed: decades(1e-3, 2e-2),
    bristleStiffness: decades(3e6, 3e8),
    viscous: decades(1, 100),
    ripple6: sometimes(0.6, decades(1e-3, 0.02)),
    ripple12: sometimes(0.6, decades(1e-3, 0.01)),
    saturationCurrent: sometimes(0.3, base.peakCurrent * between(1, 3)),
    inclination: sometimes(0.3, between(-1.5, 1.5)),
    base: random() < 0.3,
    baseMass: decades(50, 2000),
    baseFrequency: decades(4, 40),
    mode1: among(['off', 'off', 'table', 'motor side']),
    mode1Mass: decades(0.05, 1),
    mode1Frequency: decades(40, 1000),
    mode2: among(['off', 'off', 'off', 'table']),
    mode2Mass: decades(0.05, 1),
    mode2Frequency: decades(100, 2000),
    misalignment2: sometimes(0.5, between(-1e-3, 1e-3)),
  };
  const p = { ...base, ...machine };
  const { cascade, derivativeTime } = startLoop(p, preset.crossover * decades(0.3, 0.8));
  const controller = among(['PID', 'cascade'] as const);
  const loop: ParameterChanges = {
    controller,
    ...gainChanges(controller, cascade),
    derivativeTime,
    accelerationFeedforward: sometimes(0.8, movedMass(p) * between(0.9, 1.1)),
    speedFeedforward: viscousDrag(p),
    forceBias: sometimes(0.7, holdingForce(p)),
    currentRate: among([8000, 10000, 16000, 20000]),
    positionDivider: among([1, 2, 4]),
    encoderSide: among(['load', 'motor'] as const),
    encoderResolution: sometimes(0.7, decades(1e-10, 1e-7)),
    encoderNoise: sometimes(0.5, decades(1e-11, 1e-9)),
  };
  const job: ParameterChanges = {
    program: among(['shuttle', 'shuttle', 'scan', 'step', 'sine', 'staircase', 'chirp'] as const),
    stroke: between(-0.05, 0.05),
    speed: decades(0.05, 1),
    acceleration: decades(0.5, 30),
    jerk: decades(100, 20000),
    dwell: decades(0.01, 0.1),
    scanSpeed: decades(1e-3, 0.1),
    stepSize: decades(1e-7, 1e-4),
    sineAmplitude: decades(1e-6, 5e-3),
    sineFrequency: decades(1, 30),
    stairStep: decades(1e-9, 1e-5),
    process: among(['none', 'none', 'constant', 'sine', 'pulse', 'feed'] as const),
    processForce: decades(1, 50),
    processFrequency: decades(5, 200),
    windingStart: between(20, 80),
  };
  const { changes, problems } = checkParameters({ ...machine, ...loop, ...job }, base);
  const parameters = { ...base, ...changes };
  if (problems.length > 0 || crossChecks(parameters).length > 0) return null;
  return sceneOf(parameters, preset.driveType);
}
