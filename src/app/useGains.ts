import type { ParameterChanges } from '../../shared/parameters/table.ts';
import type { Messages } from './messages.ts';
import type { Store } from './store.ts';

/** Lays checked gains over the bench as one step, and says so. `words` name them: 'gains of axis.gain-sheet.json'. */
export function useGains(store: Store, messages: Messages, changes: ParameterChanges, words: string): void {
  const changed = store.change(changes, words);
  messages.note(changed ? `Now set: ${words}.` : `Nothing to change: all is set as in ${words}.`);
}
