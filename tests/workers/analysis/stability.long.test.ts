import { PRESET_NAMES } from './barePreset.ts';
import { verdictHolds } from './pushedLoop.ts';

for (const name of PRESET_NAMES) verdictHolds(name);
