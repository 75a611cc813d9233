import { describe, expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import type { AxisStatus, MoveFigures } from '../../../shared/protocol/axis.ts';
import { changeText } from '../../../src/compare/differenceTable.ts';
import { Ghost } from '../../../src/compare/ghost.ts';
import { MoveLog } from '../../../src/compare/moveLog.ts';
import { counterpart, pinRun } from '../../../src/compare/pinnedRun.ts';
import { History } from '../../../src/history/history.ts';
import { frame, PERIOD, type Source } from '../history/frames.ts';

/** Samples a move lasts; its error counts them, so that every sample tells its place in the move and the move's number. */
const LENGTH = 400;
const source: Source = (i) => {
  const value = (i % LENGTH) + 1000 * Math.floor(i / LENGTH);
  return { followingError: [value, value + 0.5] };
};
const scene = { ...DEFAULT_SCENE, parameters: { ...DEFAULT_SCENE.parameters, program: 'shuttle' as const } };

/** What a frame says when a move is under way, and the one in the frame before was `seen`. */
function status(underWay: number, seen = underWay - 1, state: AxisStatus['state'] = 'running'): AxisStatus {
  const finished = Array.from(
    { length: underWay - Math.max(seen, 0) },
    (_, k) => ({ index: Math.max(seen, 0) + k, duration: LENGTH * PERIOD }) as MoveFigures,
  );
  return {
    ...frame(0, 0, source).status,
    state,
    finished,
    lastMove: finished.at(-1) ?? null,
    moveStart: underWay * LENGTH * PERIOD,
  };
}

function runOf(moves: number) {
  const history = new History();
  history.ingest(frame(0, moves * LENGTH, source));
  const log = new MoveLog();
  for (let k = 0; k <= moves; k++) log.take(1, status(k));
  return { history, log };
}

describe('the moves of a run', () => {
  it('are known by when they began, also when a frame brings more than one', () => {
    const log = new MoveLog();
    log.take(1, status(0));
    log.take(1, status(3, 0));
    expect(log.moves.map(({ index }) => index)).toEqual([0, 1, 2, 3]);
    for (const { index, start } of log.moves) expect(start).toBeCloseTo(index * LENGTH * PERIOD, 12);
    expect(log.finished).toHaveLength(3);
    expect(log.take(1, { ...status(3), finished: [] })).toBe(false);
    expect(log.take(2, status(0))).toBe(true);
    expect(log.moves.map(({ index }) => index)).toEqual([0]);
  });

  it('are of the present parameters only when nothing changed from their start to their end', () => {
    const log = new MoveLog();
    log.take(1, { ...status(4, 3, 'paused'), tick: 9 });
    log.changed({ ...status(4, 3, 'paused'), tick: 9 });
    expect(log.moves.map((move) => log.isOfPresent(move))).toEqual([false, false]);
    log.take(1, { ...status(5), tick: 10 });
    expect(log.moves.map((move) => log.isOfPresent(move))).toEqual([false, false, true]);
  });
});

describe('a pinned run', () => {
  it('is the last cycle: there and back of a shuttle', () => {
    const { history, log } = runOf(5);
    const pinned = present(pinRun(history, log, scene));
    expect(pinned.moves.map(({ index }) => index)).toEqual([3, 4]);
    expect(pinned.from).toBeCloseTo(3 * LENGTH * PERIOD, 12);
    expect(pinned.to).toBeCloseTo(5 * LENGTH * PERIOD, 12);
    expect(counterpart(pinned, { index: 7, start: 0, figures: null })?.index).toBe(3);
    expect(counterpart(pinned, { index: 0, start: 0, figures: null })?.index).toBe(4);
  });

  it('needs a finished move', () => {
    const { history, log } = runOf(0);
    expect(pinRun(history, log, scene)).toBeNull();
  });

  it('lies sample for sample over the same moves of the present run, and outlives its own', () => {
    const { history, log } = runOf(5);
    const ghost = new Ghost(present(pinRun(history, log, scene)));
    history.ingest(frame(0, 10, source, 2));
    const again = new MoveLog();
    for (let k = 0; k <= 2; k++) again.take(2, status(k));
    ghost.align(again.moves);
    const count = 2 * LENGTH;
    const [lows, highs] = [new Float64Array(count), new Float64Array(count)];
    ghost.columns('followingError', LENGTH * PERIOD, 3 * LENGTH * PERIOD, count, lows, highs);
    // Move 1 of the new run is a way back as move 3 was, and move 2 a way out as move 4.
    expect([lows[0], lows[LENGTH - 1]]).toEqual([3000, 3000 + LENGTH - 1]);
    expect([lows[LENGTH], lows[count - 1]]).toEqual([4000, 4000 + LENGTH - 1]);
    expect(highs[7]).toBe(3007.5);
  });

  it('leaves empty what it does not know', () => {
    const { history, log } = runOf(2);
    const ghost = new Ghost(present(pinRun(history, log, scene)));
    ghost.align(log.moves.filter(({ index }) => index < 2));
    const [lows, highs] = [new Float64Array(4), new Float64Array(4)];
    ghost.columns('followingError', 0, 4 * LENGTH * PERIOD, 4, lows, highs);
    expect([...lows].map(Number.isNaN)).toEqual([false, false, true, true]);
  });
});

it.each([
  [0.1234, '+12 %'],
  [-0.0123, '−1.2 %'],
  [0.00001, '0 %'],
  [null, ''],
])('a change of %s reads %s', (change, text) => {
  expect(changeText(change)).toBe(text);
});
