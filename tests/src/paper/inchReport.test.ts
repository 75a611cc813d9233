import { describe, expect, it } from 'vitest';
import { inSystem } from '../../../shared/core/unitSystem.ts';
import type { Job } from '../../../shared/study/job.ts';
import { reportHtml } from '../../../src/paper/report/reportHtml.ts';
import { metricLeft } from '../../shared/core/metricLeft.ts';
import { recordedJob } from '../../shared/study/recordedStudy.ts';
import { textOf } from './markupText.ts';
import { sampleReport } from './sampleReport.ts';

function leftIn(system: 'metric' | 'inch', job: Job): string[] {
  const input = inSystem(system, () => sampleReport({ units: system, studyFile: '' }, job));
  // Texts of elements beside each other are told apart.
  return metricLeft(textOf(reportHtml(input).replaceAll('<', '|<')), [job.title]);
}

describe('a report for readers of inches', () => {
  it.each([
    ['as it opens', {}],
    ['upright', { inclination: Math.PI / 2, counterbalanced: 0.5, process: 'constant', processForce: 30 }],
    ['without limits', { rippleLimit: 0, growthLimit: 0 }],
  ] as const)('has no metric unit left: the job %s', (_, changes) => {
    expect(leftIn('inch', recordedJob(changes))).toEqual([]);
  });

  it('would have been caught with metric ones', () => {
    expect(leftIn('metric', recordedJob()).length).toBeGreaterThan(500);
  });
});
