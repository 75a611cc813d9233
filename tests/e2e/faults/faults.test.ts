import { pageTests } from '../support/page.ts';
import { benchWithFault, pretuningWithFault, studyWithFault } from './faultyTasks.ts';

/* One fault in each task, a different one; the others are in the long test. */

const tests = pageTests();

pretuningWithFault(tests, 'hangs');
benchWithFault(tests, 'is killed');
studyWithFault(tests, 'throws');
