import type { ToleranceCommands } from '../../shared/tolerance/commands.ts';
import type { RunResult } from '../../shared/tolerance/runFigures.ts';
import { machinesOf, type ToleranceStudy } from '../../shared/tolerance/toleranceStudy.ts';
import { steadyCycle } from '../tolerance/leadIn.ts';
import { measureMachine } from '../tolerance/measureMachine.ts';
import { summarise } from '../tolerance/summarise.ts';
import { serve } from './serve.ts';

let studied: ToleranceStudy | null = null;
let taken: RunResult[] = [];

/** The worker of tolerance studies: machines take seconds to minutes, which the page must not wait for. */
serve({
  leadIn: (scene) => steadyCycle(scene).leadIn,

  nominal: (scene) => steadyCycle(scene).result,

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
