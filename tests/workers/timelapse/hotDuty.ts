import { onPage, type Sentence, sentenceText } from '../../../shared/core/sentence.ts';
import type { DutyVerdict, LapseOptions } from '../../../shared/protocol/timeLapse.ts';
import { DUTIES } from '../../benchmarks/lapse/duties.ts';
import { withChanges } from './fullModel.ts';

/** A duty that needs a coolant, and what it has to keep. */
export const hot = withChanges(DUTIES.tubular, { payload: 8, accelerationFeedforward: 18.6, dwell: 0.01 });
export const targets: Partial<LapseOptions> = { hours: 0.1, windingTarget: 40, growthTarget: 1e-6 };

export const text = (each: Sentence) => sentenceText(each, onPage('metric'));
export const told = ({ reasons }: DutyVerdict) => reasons.map(text);
