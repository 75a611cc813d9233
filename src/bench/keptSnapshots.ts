import { failure } from '../../shared/core/problem.ts';
import {
  type KeptSnapshots,
  readSnapshots,
  type Snapshot,
  type SnapshotsResult,
  writeSnapshots,
} from '../../shared/files/snapshots.ts';
import { prefer, preferred } from '../ui/preferences.ts';

/** Where the browser does not store anything: until the page is closed. */
let unstored: readonly Snapshot[] | null = null;

/** The snapshots as this browser keeps them, and what is wrong with those that cannot be used. */
export function keptSnapshots(): KeptSnapshots {
  const kept = readSnapshots(preferred('snapshots'));
  return unstored ? { ...kept, snapshots: unstored } : kept;
}

/**
 * Changes the list as it is kept now, since another tab may have changed it meanwhile. The new list and whether it will be there the next
 * time, or why it stays as it was.
 */
export function changeSnapshots(
  change: (list: readonly Snapshot[]) => SnapshotsResult,
): SnapshotsResult & { readonly isStored?: boolean } {
  const kept = keptSnapshots();
  if (kept.isForeign) return failure('version', null, FOREIGN);
  const changed = change(kept.snapshots);
  if ('problems' in changed) return changed;
  const isStored = prefer('snapshots', writeSnapshots(changed.snapshots, kept.unused));
  unstored = isStored ? null : changed.snapshots;
  return { ...changed, isStored };
}

const FOREIGN =
  'The snapshots in this browser were kept by another version of Waybench. They are left as they are; open that version to use them.';
