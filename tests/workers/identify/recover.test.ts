import { recoveriesFromMoves } from './recoverMove.ts';
import { recoveriesOfScrews } from './recoverScrew.ts';
import { recoveriesFromSweeps } from './recoverSweep.ts';

/** All but one of six: the hundred of `recover.long.test.ts` take a minute. */
const FEW = { trials: 6, minInside: 5 };

recoveriesFromMoves(FEW);
recoveriesOfScrews(FEW);
recoveriesFromSweeps(FEW);
