import { sceneById } from '../../../scenes/index.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';

/** Half of the usual rate of the current loop: heat does not depend on it, and a run takes half of the time. */
const COARSE: ParameterChanges = { currentRate: 8000, positionDivider: 1, currentBandwidth: 600 };

/** Shuttles that warm a drive well, each kind with the gains of a scene that has its payload. */
export const DUTIES: Readonly<Record<'tubular' | 'u-channel' | 'flat' | 'screw', Scene>> = {
  tubular: duty('mould-shuttle', { acceleration: 30, jerk: 3000 }),
  'u-channel': duty('soft-coil-mounting', { acceleration: 3.5, speed: 0.5, jerk: 200 }),
  flat: duty('slow-scan-iron', { acceleration: 20, jerk: 2000 }),
  screw: duty('screw-backlash', {
    acceleration: 10,
    speed: 0.5,
    jerk: 1000,
    backlash: 0,
    nutDrag: 20,
    nutViscous: 60,
  }),
};

function duty(name: string, changes: ParameterChanges): Scene {
  const scene = sceneById(name);
  const shuttle: ParameterChanges = { program: 'shuttle', start: -0.1, stroke: 0.2, speed: 1, dwell: 0.05 };
  return { ...scene, parameters: { ...scene.parameters, ...COARSE, ...shuttle, ...changes } };
}
