import { pageTests } from '../support/page.ts';
import { FAULTS } from './breakWorkers.ts';
import { benchWithFault, pretuningWithFault, studyWithFault } from './faultyTasks.ts';

const tests = pageTests();

for (const fault of FAULTS) {
  pretuningWithFault(tests, fault);
  benchWithFault(tests, fault);
  studyWithFault(tests, fault);
}
