import { recoveriesFromMoves } from './recoverMove.ts';
import { recoveriesOfScrews } from './recoverScrew.ts';
import { recoveriesFromSweeps } from './recoverSweep.ts';

/** Of an interval with 95 % confidence, 90 of 100 are let through. */
const MANY = { trials: 100, minInside: 90 };

recoveriesFromMoves(MANY);
recoveriesOfScrews(MANY);
recoveriesFromSweeps(MANY);
