import { describe } from 'vitest';
import { COUNTS } from '../../fuzz/counts.ts';
import { pageTests } from '../support/page.ts';
import { FAULTS } from './breakWorkers.ts';
import { benchWithFault, pretuningWithFault, studyWithFault } from './faultyTasks.ts';
import { randomFaults } from './randomFaults.ts';

const tests = pageTests();

for (const fault of FAULTS) {
  pretuningWithFault(tests, fault);
  benchWithFault(tests, fault);
  studyWithFault(tests, fault);
}

describe('at a random instant', () => randomFaults(tests, COUNTS.faults));
