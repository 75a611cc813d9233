import { it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { expectToRunToItsEnd } from './plannedExperiment.ts';

it.each(SCENES)('the suggested experiment is legal and runs to its end: $id', expectToRunToItsEnd);
