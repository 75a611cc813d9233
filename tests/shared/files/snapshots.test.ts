import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { defaultParameters, type Parameters } from '../../../shared/core/parameters/table.ts';
import { type Problem, problemTexts } from '../../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../../shared/core/sentence.ts';
import { tuningOf } from '../../../shared/core/tuning.ts';
import {
  addSnapshot,
  applySnapshot,
  MAX_SNAPSHOTS,
  readSnapshots,
  removeSnapshot,
  renameSnapshot,
  type Snapshot,
  type SnapshotsResult,
  writeSnapshots,
} from '../../../shared/files/snapshots.ts';
import { always, anyParameters, anyText } from '../core/arbitraries.ts';

const p = defaultParameters();
const stiff: Parameters = { ...p, Kp: 6e6, Kd: 1e4, filter1: 'notch' };

function listed(result: SnapshotsResult): readonly Snapshot[] {
  if ('problems' in result) throw new Error(problemTexts(result.problems, AS_WRITTEN).join(' '));
  return result.snapshots;
}

const two = listed(addSnapshot(listed(addSnapshot([], ' soft ', p)), 'stiff', stiff));
const names = (list: readonly Snapshot[]) => list.map(({ name }) => name);
const messages = (result: object) =>
  'problems' in result ? problemTexts(result.problems as readonly Problem[], AS_WRITTEN).join(' ') : '';

describe('named tuning snapshots', () => {
  it('keep the tuning and nothing else, under a name without spaces round it', () => {
    expect(two).toEqual([
      { name: 'soft', tuning: tuningOf(p) },
      { name: 'stiff', tuning: tuningOf(stiff) },
    ]);
    expect(at(two, 0).tuning).not.toHaveProperty('payload');
  });

  it('are renamed in place and removed by name; the list given stays as it was', () => {
    expect(names(listed(renameSnapshot(two, 'soft', 'first try')))).toEqual(['first try', 'stiff']);
    expect(names(listed(renameSnapshot(two, 'soft', 'soft')))).toEqual(['soft', 'stiff']);
    expect(names(removeSnapshot(two, 'soft'))).toEqual(['stiff']);
    expect(names(removeSnapshot(two, 'none'))).toEqual(['soft', 'stiff']);
    expect(names(two)).toEqual(['soft', 'stiff']);
  });

  it('are laid over another set-up: only what differs, and the rest stays', () => {
    const heavy = { ...p, payload: 50, Kp: 1e6 };
    expect(applySnapshot(at(two, 1), heavy)).toEqual({ changes: { Kp: 6e6, Kd: 1e4, filter1: 'notch' } });
    expect(applySnapshot(at(two, 0), p)).toEqual({ changes: {} });
  });

  it('are refused where they contradict the set-up, with the reason', () => {
    const slow = { name: 'slow', tuning: { ...tuningOf(p), positionDivider: 16 } };
    const sweeping: Parameters = { ...p, program: 'chirp', sweepTo: 3000 };
    expect(messages(applySnapshot(slow, sweeping))).toMatch(/sweepTo.*half the rate/);
  });

  it.each([
    ['an empty name', addSnapshot(two, '  ', p), /name: it is empty/],
    ['a name of two lines', addSnapshot(two, 'a\nb', p), /one line/],
    ['a long name', addSnapshot(two, 'x'.repeat(61), p), /at most 60/],
    ['a name that is taken', addSnapshot(two, 'stiff ', p), /"stiff" is already in use/],
    ['renaming to one that is taken', renameSnapshot(two, 'soft', 'stiff'), /"stiff" is already in use/],
    ['renaming what is not there', renameSnapshot(two, 'hard', 'x'), /no snapshot "hard"/],
  ])('refuse %s', (_what, result, message) => expect(messages(result)).toMatch(message));

  it('are limited in number', () => {
    let list: readonly Snapshot[] = [];
    for (let k = 0; k < MAX_SNAPSHOTS; k++) list = listed(addSnapshot(list, `tuning ${k}`, p));
    expect(messages(addSnapshot(list, 'one more', p))).toContain(`${MAX_SNAPSHOTS} snapshots`);
  });
});

const NONE = { snapshots: [], unused: [], problems: [], isForeign: false };

describe('kept snapshots', () => {
  it('come back however many there are', () => {
    const many = Array.from({ length: MAX_SNAPSHOTS + 3 }, (_, k) => ({
      name: `tuning ${k}`,
      tuning: tuningOf(p),
    }));
    expect(names(readSnapshots(writeSnapshots(many)).snapshots)).toEqual(names(many));
  });

  it('that cannot be used stay beside the others', () => {
    const broken = { name: 'broken', tuning: { Kp: -5 } };
    const { snapshots, unused } = readSnapshots(writeSnapshots(two, [broken]));
    expect(unused).toEqual([broken]);
    expect(JSON.parse(writeSnapshots(snapshots, unused)).snapshots).toContainEqual(broken);
  });

  it.each([
    ['{"waybench": "snapshots", "version": 2}', true],
    ['{"waybench": "snapshots", "version": "x"}', true],
    ['not JSON', false],
    [writeSnapshots(two), false],
  ])('of another version are known as such: %j', (kept, isForeign) => {
    expect(readSnapshots(kept).isForeign).toBe(isForeign);
  });

  it('come back number by number', () => {
    always(fc.array(fc.tuple(anyText(1, 60), anyParameters), { maxLength: 5 }), 20, (tunings) => {
      let list: readonly Snapshot[] = [];
      for (const [name, parameters] of tunings) {
        const longer = addSnapshot(list, name, parameters);
        // A name may be drawn twice.
        if ('snapshots' in longer) list = longer.snapshots;
      }
      expect(readSnapshots(writeSnapshots(list))).toEqual({ ...NONE, snapshots: list });
    });
  });

  it('are none where nothing was kept', () => {
    expect(readSnapshots(null)).toEqual(NONE);
  });

  it('survive a bad one among them', () => {
    const kept = JSON.parse(writeSnapshots(two));
    kept.snapshots.splice(1, 0, { name: 'broken', tuning: { Kp: -5 } }, 7, {
      name: 'soft',
      tuning: { Kp: 1e6 },
    });
    const { snapshots, problems } = readSnapshots(JSON.stringify(kept));
    expect(names(snapshots)).toEqual(['soft', 'stiff']);
    expect(problems.map(({ field }) => field)).toEqual([
      'snapshots[1].Kp',
      'snapshots[2].name',
      'snapshots[3].name',
    ]);
    // In words, counted as a person counts.
    for (const text of problemTexts(problems, AS_WRITTEN)) expect(text).toMatch(/^Snapshot [234]: /);
  });

  it.each([
    ['', /not valid JSON/],
    ['[]', /must contain an object/],
    ['{"waybench": "scene", "version": 1}', /not a snapshots file/],
    ['{"waybench": "snapshots", "version": 2}', /version 2.*versions up to 1/],
    ['{"waybench": "snapshots", "version": 1, "snapshots": 3}', /snapshots: 3 is not a list/],
    [
      '{"waybench": "snapshots", "version": 1, "snapshots": [{"name": "a", "tuning": {"payload": 1}}]}',
      /"payload" is not a gain/,
    ],
    ['{"waybench": "snapshots", "version": 1, "snapshots": [{"name": "a"}]}', /it is missing/],
    [7, /must contain an object/],
  ])('%j gives none, and says why', (kept, message) => {
    const { snapshots, problems } = readSnapshots(kept);
    expect(snapshots).toEqual([]);
    expect(messages({ problems })).toMatch(message);
  });
});
