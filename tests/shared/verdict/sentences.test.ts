import { describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { factorText, listed } from '../../../shared/verdict/text.ts';
import { judge } from '../../../shared/verdict/verdict.ts';
import { recordedDrives, recordedJob } from '../study/recordedStudy.ts';
import { relettered, withMoves, withRipple } from './candidates.ts';

/** Much ripple is allowed, so that it can be told of without being a shortfall. */
const job = recordedJob({ rippleLimit: 0.02 });
const { A } = recordedDrives(job);

describe('factors in words', () => {
  it.each([
    [11.2, 'eleven times', '1000 %'],
    [2.06, 'twice', '110 %'],
    [2.5, '2.5 times', '150 %'],
    [40, '40 times', '3900 %'],
    [4000, 'more than a thousand times', '400000 %'],
    [1.38, null, '38 %'],
    [0.5, 'half', '50 %'],
    [0.335, 'a third', '67 %'],
    [0.125, 'an eighth', '88 %'],
    [0.4, null, '60 %'],
    [0.02, null, '50 times'],
  ])('%d', (factor, times, degree) => {
    expect(factorText(factor)).toEqual({ times, degree });
  });

  it('lists', () => {
    expect([listed([]), listed(['A']), listed(['A', 'B']), listed(['A', 'B', 'C'])]).toEqual([
      '',
      'A',
      'A and B',
      'A, B and C',
    ]);
  });
});

describe('an encoder on the motor', () => {
  // A band of twice the window is what ±window means; the recorded bands are of tens of nanometres and more.
  it('is named where the tool lies in a wider band than the window, and nowhere else', () => {
    const onMotor = { ...A.scene, parameters: { ...A.scene.parameters, encoderSide: 'motor' as const } };
    const about = (candidate: typeof A, window: number) =>
      judge({ ...job, values: { ...job.values, window } }, [candidate]).sentences.filter((each) =>
        each.includes('encoder on the motor sees it'),
      );
    const cold = at(A.outcome.accuracy.positioning, 0);
    const band = 'figures' in cold ? cold.figures.accuracy : 0;
    expect(band).toBeGreaterThan(0);
    expect(about({ ...A, scene: onMotor }, 0.49 * band)[0]).toContain('(bidirectional accuracy, cold)');
    expect(about({ ...A, scene: onMotor }, 0.51 * band)).toEqual([]);
    expect(about(A, 0.49 * band)).toEqual([]);
  });
});

describe('what stands out', () => {
  it('pairs what a candidate is better at with what it pays for it, and says where that comes from', () => {
    const thrifty = withRipple(withMoves(A, { rmsCurrent: 1.178 }), 0.0187, 'cogging', 0.024);
    const smooth = withRipple(relettered(A, 'B', 'Another'), 0.0017);
    const { sentences } = judge(job, [thrifty, smooth]);
    expect(sentences[0]).toBe(
      `Against A (${A.title}), B (Another) has a speed ripple an eleventh as large (0.170 % against 1.87 %), ` +
        'but draws 61 % more RMS current (1.90 A peak against 1.18 A peak).',
    );
  });

  it('says of two drives that tie that they do, and of nothing else', () => {
    const other = withMoves(relettered(A, 'B'), { settlingTime: 0.0212, peakError: 4e-5 });
    const { sentences } = judge(job, [withMoves(A, { settlingTime: 0.021 }), other]);
    expect(sentences).toContain('A and B tie on settling time: 21.0 ms and 21.2 ms.');
    expect(sentences.join(' ')).not.toContain('settling time 0');
    expect(sentences[0]).toContain('and is worse in no figure that counts here');
  });

  it('names a cause only where the parameters or the simulation have it', () => {
    const rough = withRipple(relettered(A, 'B'), 0.019, null, 0.012);
    expect(judge(job, [A, rough]).sentences[0]).toContain('B: strongest every 12.0 mm');
  });
});
