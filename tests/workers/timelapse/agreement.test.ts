import { DUTIES } from '../../benchmarks/lapse/duties.ts';
import { agreesWithFullModel } from './fullModel.ts';

// The other duties, and limits, in the long tests.
agreesWithFullModel('tubular', DUTIES.tubular);
