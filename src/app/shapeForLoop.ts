import { positionRate } from '../../shared/core/crossChecks.ts';
import { ranged } from '../../shared/core/format.ts';
import { PARAMETERS, type Parameters } from '../../shared/core/parameters/table.ts';
import { leastDampedMode } from '../../shared/figures/leastDampedMode.ts';
import { startingPoint } from '../../shared/protocol/analysis.ts';
import type { BenchActions } from '../bench/benchActions.ts';
import type { AnalysisClient } from '../clients/analysisClient.ts';
import { errorText } from '../clients/errorText.ts';
import type { Messages } from '../ui/messages.ts';

/** Sets the input shaper to the least damped oscillation of the closed loop, and says what it found. */
export async function shapeForLoop(
  p: Parameters,
  bench: BenchActions,
  analysis: AnalysisClient,
  messages: Messages,
): Promise<void> {
  try {
    const loop = await analysis.analyse(p, { ...startingPoint(p), friction: 'sliding' });
    if (!loop.figures.stable) {
      messages.note('The shaper is unchanged: the loop is unstable. Lower its gains first.');
      return;
    }
    const mode = leastDampedMode(loop, 1 / positionRate(p));
    const { min, max } = PARAMETERS.shaperFrequency;
    if (mode === null || mode.frequency < min || mode.frequency > max) {
      messages.note(
        'The shaper is unchanged: every oscillation of the loop is well damped, so it would only cost time.',
      );
      return;
    }
    const text = `input shaper set to ${ranged(mode.frequency, 'Hz')}, damping ratio ${mode.damping.toPrecision(2)}`;
    const problem = bench.shape(
      {
        shaper: p.shaper === 'none' ? 'ZV' : p.shaper,
        shaperFrequency: rounded(mode.frequency),
        shaperDamping: rounded(Math.max(mode.damping, PARAMETERS.shaperDamping.min)),
      },
      text,
      null,
    );
    messages.note(problem ?? `The least damped oscillation of the loop: ${text}.`);
  } catch (error) {
    messages.note(`The shaper is unchanged: ${errorText(error)}`);
  }
}

/** Four digits: a resonance is not known better. */
function rounded(value: number): number {
  return Number(value.toPrecision(4));
}
