import { describe, it } from 'vitest';
import { structuresOf } from '../../../shared/axis/loop/structures.ts';
import { expectBetterThanTextbook, HELD_BACK, sceneWith } from './heldBack.ts';
import { LIGHT } from './run.ts';

const SOME = { ...LIGHT, trials: 40 };

describe.each(Object.keys(HELD_BACK))('on %s', (name) => {
  it.each(structuresOf({ encoderSide: 'load' }))(
    '$name is better than the best textbook cascade at the same peak sensitivity',
    (structure) => expectBetterThanTextbook(sceneWith(name, structure), SOME),
  );
});
