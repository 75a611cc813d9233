import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { measureRun } from '../../../workers/run/measureRun.ts';

const { parameters } = DEFAULT_SCENE;

/** The first move of the opening scene, straight from the model. */
export const firstMove = (changes: ParameterChanges = {}) =>
  at(measureRun({ ...DEFAULT_SCENE, parameters: { ...parameters, ...changes } }, 1).moves, 0);
