import { expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { holdingForce } from '../../../shared/axis/gravity.ts';
import { present } from '../../../shared/core/at.ts';
import { sizeCandidate } from '../../../shared/sizing/sizeCandidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { measureRun } from '../../../workers/run/measureRun.ts';
import { moveOutcome } from '../../../workers/study/moveOutcome.ts';
import { jobOf } from '../accuracy/bench.ts';

// On paper there is no loop and no start: R i + e at the worst instant.
it('a hanging load takes the voltage of its motion, not of being switched on', () => {
  const job = jobOf({ payload: 8, inclination: Math.PI / 2, moveTime: 0.3, dwell: 0.25 });
  const choice = { preset: 'flat', motorCount: 1, own: {}, gains: null };
  const forceBias = holdingForce(candidateScene(job, choice, PRESETS).parameters);
  const scene = candidateScene(job, { ...choice, gains: { forceBias } }, PRESETS);
  const { figures } = sizeCandidate(job, scene);
  const onPaper = present(figures.find(({ id }) => id === 'voltage')).value;
  const volts = (headroom: number) => ((1 - headroom) * job.values.busVoltage) / Math.sqrt(3);
  // The weight at once, through 15 mH: far more than any move asks for.
  expect(measureRun(scene, 0.3).peakVoltage).toBeGreaterThan(1.5 * onPaper);
  expect(Math.abs(volts(moveOutcome(scene).voltageHeadroom) / onPaper - 1)).toBeLessThan(0.15);
});
