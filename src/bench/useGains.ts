import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import type { Messages } from '../ui/messages.ts';
import type { Store } from './store.ts';

/** Lays checked gains over the bench as one step, and says so. `words` name them: 'gains of axis.gain-sheet.json'. */
export function useGains(store: Store, messages: Messages, changes: ParameterChanges, text: string): void {
  const changed = store.change(changes, text);
  messages.note(
    changed ? `Now set: ${text}.` : `Nothing to change: all values are already those of ${text}.`,
  );
}
