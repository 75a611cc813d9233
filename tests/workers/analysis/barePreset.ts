import { PRESETS } from '../../../scenes/index.ts';
import { startGains } from '../../../shared/axis/loop/startGains.ts';
import { present } from '../../../shared/core/at.ts';
import {
  defaultParameters,
  type ParameterChanges,
  type Parameters,
} from '../../../shared/core/parameters/table.ts';
import { DRIVE_TYPES } from '../../../shared/core/scene.ts';
import { type OperatingPoint, startingPoint } from '../../../shared/protocol/analysis.ts';
import { linearise } from '../../../workers/analysis/linearise.ts';
import { root } from '../../../workers/math/root.ts';
import { Axis } from '../../../workers/run/axis.ts';
import { sceneOf } from '../model/sceneOf.ts';

/** The drives that the scenes use, one of each form. */
export const PRESET_NAMES: readonly string[] = DRIVE_TYPES;

/** A drive of the shelf with its start gains, without noise and rounding. */
export function quietPreset(name: string, changes: ParameterChanges = {}): Parameters {
  const preset = present(PRESETS[name]);
  const p: Parameters = {
    ...defaultParameters(),
    ...preset.parameters,
    encoderNoise: 0,
    encoderResolution: 0,
  };
  return atDetent({ ...p, ...startGains(p, preset.crossover), ...changes });
}

/** The same without dry friction. */
export function barePreset(name: string, changes: ParameterChanges = {}): Parameters {
  return quietPreset(name, {
    frictionCoefficient: 0,
    stictionCoefficient: 0,
    sealFriction: 0,
    sealStiction: 0,
    hysteresisDrag: 0,
    nutDrag: 0,
    ...changes,
  });
}

/** Standing, without dry friction. */
export function bareStanding(p: Parameters): OperatingPoint {
  return { ...startingPoint(p), friction: 'sliding' };
}

/**
 * Runs the axis for `samples` of its position loop; `onSample` sees the record and the time of each.
 * @returns true unless it tripped
 */
export function runAxis(
  p: Parameters,
  samples: number,
  onSample: (record: Float64Array, time: number) => void,
): boolean {
  const axis = new Axis(sceneOf(p));
  for (let taken = 0; taken < samples; ) {
    const isSample = axis.atPositionSample;
    const { time } = axis;
    if (!axis.step()) return false;
    if (!isSample) continue;
    onSample(axis.record, time);
    taken++;
  }
  return true;
}

/** Moves the start to the next place where cogging needs no current to hold: the axis starts in balance. */
function atDetent(p: Parameters): Parameters {
  if (p.cogging1 === 0) return p;
  const held = (position: number) => linearise(p, { ...bareStanding(p), position }).heldCurrentQ;
  const step = p.cogging1Period / 20;
  let position = p.start;
  while (held(position) * held(position + step) > 0) position += step;
  return { ...p, start: root(held, position, position + step) };
}
