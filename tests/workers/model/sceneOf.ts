import {
  defaultParameters,
  type ParameterChanges,
  type Parameters,
} from '../../../shared/core/parameters/table.ts';
import type { DriveType, Scene } from '../../../shared/core/scene.ts';

/** These parameters as a scene of its own. */
export function sceneOf(parameters: Parameters, driveType: DriveType = 'tubular'): Scene {
  return { id: null, preset: null, title: 'Bench', lookFor: '', driveType, moves: [], parameters };
}

/** A bare axis: the defaults without friction, ripple, noise and quantisation, plus what a test asks for. */
export function bareScene(changes: ParameterChanges = {}): Scene {
  return sceneOf({
    ...defaultParameters(),
    frictionCoefficient: 0,
    stictionCoefficient: 0,
    sealFriction: 0,
    sealStiction: 0,
    viscous: 0,
    ripple6: 0,
    ripple12: 0,
    encoderNoise: 0,
    encoderResolution: 0,
    scaleExpansion: 0,
    magnetTempCoefficient: 0,
    windingStart: 20,
    carrierStart: 20,
    ambient: 20,
    ...changes,
  });
}
