import { defaultParameters, type ParameterChanges, type Parameters } from '../core/parameters/table.ts';
import {
  entryFailure,
  type Failure,
  failure,
  isNot,
  isPrintable,
  isRecord,
  MAX_PROBLEMS,
  type Problem,
  shown,
  within,
} from '../core/problem.ts';
import { checkTuning, type Tuning, tuningOf } from '../core/tuning.ts';
import { withFiltersOfToday } from './formerFilters.ts';
import { openFile } from './jsonFile.ts';

/** A tuning that was worth a name. */
export interface Snapshot {
  readonly name: string;
  readonly tuning: Partial<Tuning>;
}

export type SnapshotsResult = { readonly snapshots: readonly Snapshot[] } | Failure;

const SNAPSHOTS_VERSION = 1;
export const MAX_SNAPSHOTS = 50;
const LONGEST_NAME = 60;

/** The list with the tuning of `p` under a new name at its end. */
export function addSnapshot(list: readonly Snapshot[], name: string, p: Parameters): SnapshotsResult {
  if (list.length >= MAX_SNAPSHOTS) {
    return failure(
      'name',
      name,
      `There are ${list.length} snapshots already, and ${MAX_SNAPSHOTS} at most can be kept. Remove one first.`,
    );
  }
  const checked = checkName(name, list);
  if ('problems' in checked) return checked;
  return { snapshots: [...list, { name: checked.name, tuning: tuningOf(p) }] };
}

/** The list with one snapshot under another name, in its old place. */
export function renameSnapshot(list: readonly Snapshot[], from: string, to: string): SnapshotsResult {
  const others = list.filter(({ name }) => name !== from);
  if (others.length === list.length)
    return entryFailure('name', from, `there is no snapshot ${shown(from)}.`);
  const checked = checkName(to, others);
  if ('problems' in checked) return checked;
  return { snapshots: list.map((each) => (each.name === from ? { ...each, name: checked.name } : each)) };
}

export function removeSnapshot(list: readonly Snapshot[], name: string): readonly Snapshot[] {
  return list.filter((each) => each.name !== name);
}

/** What turns `p` into the tuning of the snapshot, or why it does not fit beside the other parameters. */
export function applySnapshot(
  { tuning }: Snapshot,
  p: Parameters,
): { readonly changes: ParameterChanges } | Failure {
  const checked = checkTuning(tuning, p);
  if ('problems' in checked) return checked;
  const differing = Object.entries(checked.changes).filter(
    ([name, value]) => p[name as keyof Tuning] !== value,
  );
  return { changes: Object.fromEntries(differing) };
}

export function writeSnapshots(snapshots: readonly Snapshot[], unused: readonly unknown[] = []): string {
  const entries = { waybench: 'snapshots', version: SNAPSHOTS_VERSION, snapshots: [...snapshots, ...unused] };
  return JSON.stringify(entries);
}

export interface KeptSnapshots {
  readonly snapshots: readonly Snapshot[];
  /** Entries that cannot be used, as they were found: they are kept beside the others. */
  readonly unused: readonly unknown[];
  /** Why they cannot be used. */
  readonly problems: readonly Problem[];
  /** Another version of Waybench wrote it: nothing may be written in its place. */
  readonly isForeign: boolean;
}

/** Reads what was kept, or nothing at all, however many there are. Total: the snapshots that can be used, and what is wrong with the others. */
export function readSnapshots(input: unknown): KeptSnapshots {
  const none = { snapshots: [], unused: [], problems: [], isForeign: false };
  if (input === null || input === undefined) return none;
  const opened = openFile(input, 'snapshots', SNAPSHOTS_VERSION);
  if ('problems' in opened) {
    return { ...none, ...opened, isForeign: opened.problems.some(({ field }) => field === 'version') };
  }
  const { snapshots: entries } = opened.entries;
  if (!Array.isArray(entries)) {
    return { ...none, ...entryFailure('snapshots', entries, isNot(entries, 'a list')) };
  }
  const snapshots: Snapshot[] = [];
  const unused: unknown[] = [];
  const problems: Problem[] = [];
  for (const [index, entry] of entries.entries()) {
    const read = readSnapshot(entry, index, snapshots);
    if (!('problems' in read)) snapshots.push(read);
    else {
      unused.push(entry);
      problems.push(...read.problems);
    }
  }
  return { ...none, snapshots, unused, problems: problems.slice(0, MAX_PROBLEMS) };
}

function readSnapshot(entry: unknown, index: number, before: readonly Snapshot[]): Snapshot | Failure {
  const { name, tuning } = isRecord(entry) ? entry : {};
  const checkedName = checkName(name, before);
  if ('problems' in checkedName) return inPlace(index, checkedName);
  // Beside the defaults, since a snapshot is not yet laid over anything.
  const named = isRecord(tuning) ? withFiltersOfToday(tuning) : tuning;
  const checked = checkTuning(named, defaultParameters());
  if ('problems' in checked) return inPlace(index, checked);
  return { name: checkedName.name, tuning: checked.changes };
}

/** Told by its place in the list, as a person counts. */
function inPlace(index: number, { problems }: Failure): Failure {
  return { problems: problems.map((each) => within(`snapshots[${index}]`, each, `Snapshot ${index + 1}`)) };
}

function checkName(name: unknown, taken: readonly Snapshot[]): { readonly name: string } | Failure {
  if (typeof name !== 'string') return entryFailure('name', name, `${isNot(name, 'text')} Enter a name.`);
  const trimmed = name.trim();
  if (trimmed === '') return entryFailure('name', name, 'it is empty. Enter a name.');
  if (trimmed.length > LONGEST_NAME || !isPrintable(trimmed)) {
    const message = `${shown(name)} is not one line of at most ${LONGEST_NAME} characters.`;
    return entryFailure('name', name, message);
  }
  if (taken.some((each) => each.name === trimmed)) {
    const message = `${shown(trimmed)} is already in use. Enter another name, or remove the old one.`;
    return entryFailure('name', name, message);
  }
  return { name: trimmed };
}
