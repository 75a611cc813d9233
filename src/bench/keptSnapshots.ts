import { readSnapshots, type Snapshot, writeSnapshots } from '../../shared/files/snapshots.ts';
import { prefer, preferred } from '../ui/preferences.ts';

/** The snapshots as this browser keeps them, and what is wrong with those that cannot be used. */
export function keptSnapshots(): ReturnType<typeof readSnapshots> {
  return readSnapshots(preferred('snapshots'));
}

/** Whether they will be there the next time. */
export function keepSnapshots(snapshots: readonly Snapshot[]): boolean {
  return prefer('snapshots', writeSnapshots(snapshots));
}
