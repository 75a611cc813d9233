import { describe, expect, it, vi } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { defaultParameters } from '../../../shared/core/parameters/table.ts';
import { type Bench, benchOf, changedNames, differences, presentScene } from '../../../src/bench/bench.ts';
import { Store } from '../../../src/bench/store.ts';

const scene = {
  id: 'mould-table',
  preset: 'tubular',
  title: 'Mould table',
  lookFor: 'The error at the ends of the stroke.',
  driveType: 'tubular',
  parameters: defaultParameters(),
  moves: [],
} as const;
const fresh = () => new Store(benchOf(scene));
const gains = (store: Store) => [store.bench.parameters.Kp, store.bench.parameters.Kd];

describe('store', () => {
  it('undoes and redoes in order', () => {
    const store = fresh();
    const [Kp, Kd] = gains(store);
    store.change({ Kp: 1e6 }, 'first');
    store.change({ Kd: 500 }, 'second');
    expect(store.undoText).toBe('second');
    store.undo();
    expect(gains(store)).toEqual([1e6, Kd]);
    store.undo();
    expect(gains(store)).toEqual([Kp, Kd]);
    expect([store.undoText, store.redoText]).toEqual([null, 'first']);
    store.redo();
    store.redo();
    expect(gains(store)).toEqual([1e6, 500]);
    expect(store.redoText).toBeNull();
  });

  it('takes one drag of a slider as one step, and the next drag as another', () => {
    const store = fresh();
    const [Kp] = gains(store);
    for (const value of [1e6, 2e6, 3e6]) store.change({ Kp: value }, 'gain', 'Kp drag 1');
    for (const value of [4e6, 5e6]) store.change({ Kp: value }, 'gain', 'Kp drag 2');
    store.undo();
    expect(store.bench.parameters.Kp).toBe(3e6);
    store.undo();
    expect(store.bench.parameters.Kp).toBe(Kp);
  });

  it('does not continue a drag that was undone', () => {
    const store = fresh();
    store.change({ Kp: 1e6 }, 'gain', 'drag');
    store.change({ Kd: 1 }, 'damping');
    store.undo();
    store.change({ Kp: 2e6 }, 'gain', 'drag');
    store.undo();
    expect(store.bench.parameters.Kp).toBe(1e6);
  });

  it('forgets the undone future on a new change', () => {
    const store = fresh();
    store.change({ Kp: 1e6 }, 'a');
    store.undo();
    store.change({ Kd: 10 }, 'b');
    store.redo();
    expect(store.bench.parameters.Kp).toBe(scene.parameters.Kp);
  });

  it('makes no step of a change that changes nothing', () => {
    const store = fresh();
    const heard = vi.fn();
    store.subscribe(heard);
    store.change({ Kp: scene.parameters.Kp }, 'nothing');
    expect(store.undoText).toBeNull();
    expect(heard).not.toHaveBeenCalled();
  });

  it('tells subscribers what is and what was, until they leave', () => {
    const store = fresh();
    const heard: [Bench, Bench][] = [];
    const leave = store.subscribe((is, was) => heard.push([is, was]));
    store.change({ Kp: 1e6, Ki: 0 }, 'gains');
    const [is, was] = at(heard, 0);
    expect(differences(was.parameters, is.parameters)).toEqual({ Kp: 1e6, Ki: 0 });
    leave();
    store.undo();
    expect(heard).toHaveLength(1);
  });

  it('brings back a whole bench in one step, with what its fields reset to', () => {
    const store = fresh();
    store.change({ Kp: 1e6 }, 'gain');
    const other = {
      ...scene,
      preset: 'screw',
      driveType: 'screw',
      parameters: { ...scene.parameters, lead: 0.01 },
    } as const;
    store.replace(benchOf(other), 'screw drive');
    expect(presentScene(store.bench)).toEqual(other);
    store.undo();
    expect(store.bench.origin).toBe(scene);
    expect(changedNames(store.bench.origin.parameters, store.bench.parameters)).toEqual(['Kp']);
  });

  it('leaves the opened scene as it was', () => {
    const before = structuredClone(scene);
    const store = fresh();
    store.change({ Kp: 1e6 }, 'gain');
    expect(scene).toEqual(before);
  });
});
