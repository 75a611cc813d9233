import type { Scene } from '../../shared/core/scene.ts';
import type { ToleranceCommands } from '../../shared/tolerance/commands.ts';
import type { RunResult } from '../../shared/tolerance/runFigures.ts';
import { machinesOf, type ToleranceStudy } from '../../shared/tolerance/toleranceStudy.ts';
import { steadyCycle } from '../tolerance/leadIn.ts';
import { measureMachine } from '../tolerance/measureMachine.ts';
import { summarise } from '../tolerance/summarise.ts';
import { serve } from './serve.ts';

let studied: ToleranceStudy | null = null;
let taken: RunResult[] = [];
/** The scene that was measured last: a study begins with the machine that its limits were offered by. */
let measured: { readonly scene: string; readonly cycle: ReturnType<typeof steadyCycle> } | null = null;

function steadyCycleOf(scene: Scene) {
  const written = JSON.stringify(scene);
  if (measured?.scene !== written) measured = { scene: written, cycle: steadyCycle(scene) };
  return measured.cycle;
}

/** The worker of tolerance studies: machines take seconds to minutes, which the page must not wait for. */
serve({
  leadIn: (scene) => steadyCycleOf(scene).leadIn,

  nominal: (scene) => steadyCycleOf(scene).result,

  run(study, leadIn, from, to) {
    const machine = machinesOf(study);
    return Array.from({ length: to - from + 1 }, (_, k) => ({
      run: from + k,
      ...measureMachine(machine(from + k).scene, leadIn),
    }));
  },

  begin(study) {
    studied = study;
    taken = [];
  },

  take(results) {
    taken.push(...results);
    return studied && summarise(studied, taken);
  },
} satisfies ToleranceCommands);
