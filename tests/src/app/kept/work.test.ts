import { expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../../../scenes/index.ts';
import { readWork, workOf, workText } from '../../../../src/app/kept/work.ts';
import { benchOf } from '../../../../src/bench/bench.ts';
import { Store } from '../../../../src/bench/store.ts';

const STUDY = { title: 'Move a mould', text: '{}', steps: null, isShown: true };

function changed(): Store {
  const store = new Store(benchOf(DEFAULT_SCENE));
  store.change({ Kp: 2e6 }, 'K_p to 2·10⁶ N/m');
  store.change({ Kp: 3e6 }, 'K_p to 3·10⁶ N/m');
  store.undo();
  return store;
}

it('work comes back with its steps, back and forth, as a browser keeps it', () => {
  const kept = structuredClone(workOf(changed().timeline(100), STUDY, 0));
  const read = readWork(kept);
  if (!read) throw new Error('was not read');
  const store = new Store(benchOf(DEFAULT_SCENE));
  store.restore(read.bench);
  expect(store.bench.parameters.Kp).toBe(2e6);
  expect([store.undoText, store.redoText]).toEqual(['K_p to 2·10⁶ N/m', 'K_p to 3·10⁶ N/m']);
  store.redo();
  expect(store.bench.parameters.Kp).toBe(3e6);
  store.undo();
  store.undo();
  expect(store.bench.parameters.Kp).toBe(DEFAULT_SCENE.parameters.Kp);
  expect(read.study).toEqual(STUDY);
});

it('work of another version is its scene as it was set, without the steps', () => {
  const kept = { ...workOf(changed().timeline(100), STUDY, 0), layout: '0.0.1' };
  const read = readWork(kept);
  expect(read?.bench.present.value.parameters).toEqual({ ...DEFAULT_SCENE.parameters, Kp: 2e6 });
  expect(read?.bench.past).toEqual([]);
  expect(readWork({ ...kept, scene: '{' })).toBeNull();
});

it('the steps that are kept are bounded', () => {
  const store = new Store(benchOf(DEFAULT_SCENE));
  for (let k = 1; k <= 20; k++) store.change({ Kp: 1e6 + k }, `step ${k}`);
  const { past, present } = store.timeline(5);
  expect([past.length, present.text]).toEqual([5, 'step 20']);
});

it('says what was worked on', () => {
  const { title } = DEFAULT_SCENE;
  expect(workText(workOf(changed().timeline(100), STUDY, 0))).toBe(`${title}, 1 change; study Move a mould`);
  const untouched = new Store(benchOf(DEFAULT_SCENE)).timeline(100);
  expect(workText(workOf(untouched, null, 0))).toBe(title);
});
