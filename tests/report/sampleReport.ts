import type { Verdict } from '../../shared/study/verdict.ts';
import type { ReportInput } from '../../src/report/reportInput.ts';
import { sampleState } from '../study/sampleOutcome.ts';

/** A verdict of two rows, made up, with every kind of cell in it. */
const VERDICT: Verdict = {
  rows: [
    {
      id: 'settlingTime',
      group: 'pace',
      label: 'Settling time',
      unit: 'ms',
      better: 'less',
      definition: 'From the end of the commanded motion until the error stays in the window.',
      asked: 'within 200 ms',
      cells: [
        { value: 0.021, text: '21.0 ms', cause: null, mark: 'best', fails: false, reason: null },
        { value: 0.026, text: '26.0 ms', cause: null, mark: null, fails: false, reason: null },
        { value: 0.034, text: '34.0 ms', cause: null, mark: null, fails: false, reason: null },
        {
          value: null,
          text: 'not settled',
          cause: 'its encoder sits on the motor',
          mark: null,
          fails: true,
          reason: 'does not settle',
        },
      ],
    },
    {
      id: 'ripplePeak',
      group: 'smoothness',
      label: 'Speed ripple, peak',
      unit: '%',
      better: 'less',
      definition: 'Half of peak to peak, K_f aside.',
      asked: null,
      cells: [0.0028, 0.0028, 0.044, 0.043].map((value, k) => ({
        value,
        text: `${(100 * value).toFixed(2)} %`,
        cause: k > 1 ? 'from cogging at 24.0 mm' : null,
        mark: k < 2 ? ('tie' as const) : null,
        fails: false,
        reason: null,
      })),
    },
  ],
  ranking: [0, 1, 2],
  first: [0],
  shortfalls: [[], [], [], ['It does not settle.']],
  choice: 'Lane A does all that is asked and draws least.',
  rule: 'Lanes that do all that is asked are ranked by what they draw.',
  fairness: 'All lanes are tuned to one peak sensitivity.',
  sentences: ['The ripple of C is sixteen times that of A.'],
  flips: [{ input: 'payload', from: 5, to: 40, sentence: 'From 40 kg of payload on, lane C is chosen.' }],
  flipNote: 'Each entry of the job was varied alone, the others held.',
};

/** A picture of one white pixel. */
export const PIXEL =
  'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAQAAAC1HAwCAAAAC0lEQVR42mP8/x8AAwMCAO+ip1sAAAAASUVORK5CYII=';

export function sampleReport(changes: Partial<ReportInput> = {}): ReportInput {
  const { study, units, lanes } = sampleState();
  return {
    study,
    units,
    lanes,
    verdict: VERDICT,
    pictures: { stage: PIXEL },
    link: 'https://example.org/waybench/#study',
    studyFile: JSON.stringify(study, null, 2),
    version: '0.0.0',
    printed: '1 May',
    ...changes,
  };
}
