import { followingSine, measuredBySteppedSine, pushedByProcessForce } from './measuredLoop.ts';

// The other drives, chirps, filters and the presliding guide in the long tests.
measuredBySteppedSine('tubular');
pushedByProcessForce('tubular');
followingSine('tubular');
