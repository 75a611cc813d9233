import { tablePeak } from '../../shared/core/coggingTable.ts';
import { ranged } from '../../shared/core/format.ts';
import { tripText } from '../../shared/figures/tripText.ts';
import { writeCsv } from '../../shared/files/csv.ts';
import { coggingTableCells } from '../../shared/sheet/coggingCells.ts';
import { presentScene } from '../bench/bench.ts';
import type { BenchActions } from '../bench/benchActions.ts';
import type { Store } from '../bench/store.ts';
import type { CoggingClient } from '../clients/coggingClient.ts';
import { errorText } from '../clients/errorText.ts';
import { fileName, saveText } from '../ui/files.ts';
import type { Messages } from '../ui/messages.ts';

/** Learns the cogging of the machine on the bench and puts the table there, unless there is nothing to gain; says what came of it. */
export async function learnCogging(
  store: Store,
  bench: BenchActions,
  client: CoggingClient,
  messages: Messages,
): Promise<void> {
  const scene = presentScene(store.bench);
  messages.note('Scanning a copy of the axis slowly in both directions …');
  try {
    const found = await client.learn(scene);
    if (found === null) return;
    if ('refused' in found) messages.note(`No cogging table was learned. ${found.refused}`);
    else if ('trip' in found) {
      messages.note(`No cogging table was learned: the drive tripped. ${tripText(found.trip)}`);
    } else if (found.nothingToGain) {
      messages.note(
        `There is nothing to gain from a cogging table: its peak is ${ranged(tablePeak(found.table), 'N')}, below 0.5 % of the continuous force.`,
      );
    } else {
      bench.useCoggingTable(found.table);
      messages.note(
        `Cogging table learned and switched on: peak ${ranged(tablePeak(found.table), 'N')}. Friction in the scan: ${ranged(found.friction, 'N')}.`,
      );
    }
  } catch (error) {
    messages.note(`No cogging table was learned: ${errorText(error)}`);
  }
}

/** Saves the learned table of the bench as a CSV file. */
export function saveCogging(store: Store, messages: Messages): void {
  const { coggingTable, title } = store.bench.origin;
  if (!coggingTable) return;
  const name = fileName(`${title} cogging table`, 'csv');
  saveText(name, writeCsv(coggingTableCells(coggingTable)), 'text/csv');
  messages.note(`Saved as ${name}.`);
}
