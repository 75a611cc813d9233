import { at } from '../../shared/core/at.ts';
import { ranged } from '../../shared/core/format.ts';
import { tripText } from '../../shared/figures/tripText.ts';
import { presentScene } from '../bench/bench.ts';
import type { BenchActions } from '../bench/benchActions.ts';
import type { Store } from '../bench/store.ts';
import { errorText } from '../clients/errorText.ts';
import type { LearnMoveClient } from '../clients/learnMoveClient.ts';
import type { Messages } from '../ui/messages.ts';

/** Learns a force for the repeated move of the bench, applies it there, and says what came of it. */
export async function learnMove(
  store: Store,
  bench: BenchActions,
  client: LearnMoveClient,
  messages: Messages,
): Promise<void> {
  messages.note('Repeating the move on a copy of the axis …');
  try {
    const outcome = await client.learn(presentScene(store.bench));
    if (outcome === null) return;
    if ('refused' in outcome) messages.note(`Nothing was learned. ${outcome.refused}`);
    else if ('trip' in outcome) {
      messages.note(`Nothing was learned: the drive tripped. ${tripText(outcome.trip)}`);
    } else {
      const { peaks } = outcome.learned.course;
      bench.useLearnedMove(outcome.learned);
      messages.note(
        `Move learned and applied: peak error from ${ranged(at(peaks, 0), 'm')} to ${ranged(at(peaks, peaks.length - 1), 'm')} in ${peaks.length} repeats.`,
      );
    }
  } catch (error) {
    messages.note(`Nothing was learned: ${errorText(error)}`);
  }
}
