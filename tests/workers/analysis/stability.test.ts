import { verdictHolds } from './pushedLoop.ts';

// The other drives, and a finer grid of gains, in the long tests.
verdictHolds('u-channel', [0.5, 2, 5, 20]);
