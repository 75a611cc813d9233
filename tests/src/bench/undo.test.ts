import { describe, expect, it } from 'vitest';
import { UndoHistory } from '../../../src/bench/undo.ts';

describe('an undo history', () => {
  it('goes back and forth in order, and says what each step did', () => {
    const history = new UndoHistory('a');
    history.advance('b', 'to b');
    history.advance('c', 'to c');
    expect([history.undoText, history.redoText]).toEqual(['to c', null]);
    expect([history.undo(), history.present]).toEqual([true, 'b']);
    expect([history.undoText, history.redoText]).toEqual(['to b', 'to c']);
    expect([history.undo(), history.undo(), history.present]).toEqual([true, false, 'a']);
    expect([history.redo(), history.redo(), history.redo(), history.present]).toEqual([
      true,
      true,
      false,
      'c',
    ]);
  });

  it('takes the steps of one gesture as one, unless something was undone meanwhile', () => {
    const history = new UndoHistory(0);
    for (const value of [1, 2]) history.advance(value, 'drag', 'first drag');
    for (const value of [3, 4]) history.advance(value, 'drag', 'second drag');
    history.undo();
    expect(history.present).toBe(2);
    history.advance(5, 'drag', 'first drag');
    history.undo();
    expect(history.present).toBe(2);
    history.undo();
    expect(history.present).toBe(0);
  });

  it('forgets what was undone when something else is done', () => {
    const history = new UndoHistory(0);
    history.advance(1);
    history.undo();
    history.advance(2);
    expect([history.redo(), history.present]).toEqual([false, 2]);
  });

  it('amends the present without a step: undo leads past it, redo back to it', () => {
    const history = new UndoHistory('job');
    history.advance('other job', 'other job');
    history.amend('other job, tuned');
    history.undo();
    expect(history.present).toBe('job');
    history.redo();
    expect(history.present).toBe('other job, tuned');
  });

  it('keeps the last 500 steps', () => {
    const history = new UndoHistory(0);
    for (let value = 1; value <= 600; value++) history.advance(value);
    let steps = 0;
    while (history.undo()) steps++;
    expect([steps, history.present]).toEqual([500, 100]);
  });
});
