import { startGains } from '../axis/loop/startGains.ts';
import { present } from '../core/at.ts';
import { checkParameters } from '../core/check.ts';
import type { ParameterChanges } from '../core/parameters/table.ts';
import type { Presets, Scene } from '../core/scene.ts';
import type { CandidateChoice } from './candidate.ts';

/**
 * Gains for a drive that the sizing rules out, or that no tuning lets do the job: start gains at the crossover of its preset. It is not
 * tuned in vain, and is simulated all the same, so that everyone sees by how much it fails.
 */
export function untunedGains(
  { parameters }: Scene,
  { preset }: Pick<CandidateChoice, 'preset'>,
  presets: Presets,
): ParameterChanges {
  return checkParameters(startGains(parameters, present(presets[preset]).crossover), parameters).changes;
}
