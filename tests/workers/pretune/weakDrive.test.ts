import { expect, it } from 'vitest';
import { shelfScene } from '../../scenes/runs.ts';
import { here, LIGHT, pretuned } from './run.ts';

// Newton's second law: with a hundredth of its peak current the drive cannot give the mass its acceleration, whatever the loop. So it
// lags until it trips.
it('a drive that is too weak for the job is told what stops it', async () => {
  const scene = shelfScene('mould-shuttle', {
    stroke: 0.02,
    dwell: 0.08,
    peakCurrent: 0.1,
    continuousCurrent: 0.05,
    currentRate: 4000,
  });
  const little = { ...LIGHT, trials: 1, wanted: { rounds: 0, trimmed: 2 }, sensitivities: [], finalists: 1 };
  await expect(pretuned(scene, { kind: 'peak sensitivity', limit: 1.6 }, [here], little)).rejects.toThrow(
    /^No loop that keeps a peak sensitivity of 1\.6 does the job with this drive\. With the best of them it trips: The following error passed/,
  );
});
