import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { defaultParameters } from '../../../shared/core/parameters/table.ts';
import { addSnapshot, type Snapshot, writeSnapshots } from '../../../shared/files/snapshots.ts';
import { changeSnapshots, keptSnapshots } from '../../../src/bench/keptSnapshots.ts';

const p = defaultParameters();
const KEY = 'waybench snapshots';

/** What this browser stores, for all of its tabs. */
const stored = new Map<string, string>();

beforeEach(() => {
  stored.clear();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => stored.get(key) ?? null,
    setItem: (key: string, value: string) => void stored.set(key, value),
  });
});

afterEach(() => void vi.unstubAllGlobals());

const keep = (name: string) => changeSnapshots((list) => addSnapshot(list, name, p));
const names = () => keptSnapshots().snapshots.map(({ name }) => name);

it('two tabs do not overwrite each other’s snapshots', () => {
  keep('of this tab');
  const added = addSnapshot(keptSnapshots().snapshots, 'of another tab', p) as { snapshots: Snapshot[] };
  stored.set(KEY, writeSnapshots(added.snapshots));
  keep('again of this tab');
  expect(names()).toEqual(['of this tab', 'of another tab', 'again of this tab']);
});

it('what a newer version has kept is left as it is, and that is said', () => {
  const theirs = JSON.stringify({ waybench: 'snapshots', version: 1000, snapshots: [] });
  stored.set(KEY, theirs);
  expect(keep('of this tab')).toHaveProperty('problems');
  expect(stored.get(KEY)).toBe(theirs);
});
