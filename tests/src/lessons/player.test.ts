import { expect, test } from 'vitest';
import { LESSONS } from '../../../scenes/lessons/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import { CHANNEL_COUNT, CHANNEL_INDEX } from '../../../shared/core/channels.ts';
import type { LessonStep } from '../../../shared/lesson/lesson.ts';
import type { Frame } from '../../../shared/protocol/axis.ts';
import type { ReplayWatcher } from '../../../src/bench/axisRun.ts';
import { claimLines, predictionText } from '../../../src/lessons/answerParts.ts';
import { LessonPlayer } from '../../../src/lessons/player.ts';

const { lesson } = present(LESSONS.find(({ id }) => id === 'cogging-by-hand'));
const [first, second] = [at(lesson.steps, 0), at(lesson.steps, 1)];

/** A bench that notes what is done with it, and runs when it is told to. */
function setUp() {
  const set: LessonStep[] = [];
  let watcher: ReplayWatcher | null = null;
  let hurried = false;
  const player = new LessonPlayer(
    lesson,
    {
      set: (step) => {
        set.push(step);
        watcher?.ended('left');
        watcher = null;
      },
      play: (_session, _pace, watching) => {
        watcher = watching;
      },
      rest: () => {},
      recording: () => Promise.reject(new Error('nothing is recorded here')),
      hurry: () => {
        hurried = true;
      },
      loopFigures: () => Promise.reject(new Error('no loop here')),
      giveBack: () => {},
    },
    () => {},
  );
  const end = (how: 'complete' | 'left' = 'complete') => present(watcher).ended(how);
  const show = (frame: Frame) => present(watcher).take?.(frame);
  return { player, set, end, show, hurried: () => hurried };
}

/** A frame of one bin at a moment, with one channel at a value. */
function frameOf(channel: 'tableSpeed' | 'handForce', value: number): Frame {
  const bins = new Float64Array(2 * CHANNEL_COUNT);
  bins.fill(2, 2 * CHANNEL_INDEX.time, 2 * CHANNEL_INDEX.time + 2);
  bins.fill(value, 2 * CHANNEL_INDEX[channel], 2 * CHANNEL_INDEX[channel] + 2);
  return { run: 1, bins, count: 1, now: new Float64Array(), status: { finished: [], trip: null } as never };
}

test('on runs the step, then shows what was measured, then goes to the next step', async () => {
  const { player, set, end, show } = setUp();
  player.go(0);
  expect([set.length, player.phase]).toEqual([1, 'asked']);
  player.next();
  expect(player.phase).toBe('running');
  show(frameOf('tableSpeed', 0.25));
  end();
  await Promise.resolve();
  expect(player.phase).toBe('answered');
  expect(player.measured.get('speed iron')).toBe(0.25);
  player.next();
  expect([player.index, player.phase, set.at(-1)]).toEqual([1, 'asked', second]);
});

test('on during a run hurries it, and cuts nothing off', () => {
  const { player, hurried } = setUp();
  player.go(0);
  player.next();
  player.next();
  expect([player.phase, hurried()]).toEqual(['running', true]);
});

test('a run that is broken off asks again', () => {
  const { player, end } = setUp();
  player.go(0);
  player.next();
  end('left');
  expect(player.phase).toBe('asked');
  expect(player.measured.size).toBe(0);
});

test('back sets the step afresh, and from there shows the answer of the one before', async () => {
  const { player, end } = setUp();
  player.go(0);
  player.next();
  end();
  await Promise.resolve();
  player.next();
  player.next();
  player.back();
  expect([player.index, player.phase]).toEqual([1, 'asked']);
  player.back();
  expect([player.index, player.phase]).toEqual([0, 'answered']);
  player.back();
  player.back();
  expect([player.index, player.phase]).toEqual([0, 'asked']);
});

test('the lesson ends after the answer of its last step', async () => {
  const { player, end } = setUp();
  player.go(99);
  expect([player.step, player.isAtEnd]).toEqual([second, false]);
  player.next();
  end();
  await Promise.resolve();
  expect(player.isAtEnd).toBe(true);
  player.next();
  expect(player.index).toBe(1);
});

test('only answers that are offered can be chosen, and only before the run', () => {
  const { player } = setUp();
  player.go(0);
  player.choose(8);
  expect(player.chosen).toBeNull();
  player.choose(2);
  player.next();
  player.choose(1);
  expect(player.chosen).toBe(2);
});

test('a prediction is set against what turned out', () => {
  expect(predictionText(first, null)).toBe('');
  expect(predictionText(first, 1)).toMatch(/^As predicted: In jerks/);
  expect(predictionText(first, 0)).toMatch(/^Predicted: Evenly.* It turned out: In jerks/);
});

test('a figure that is still missing names the step that measures it', () => {
  const measured = new Map([
    ['speed ironless', 0.01],
    ['hand ironless', 1],
  ]);
  expect(claimLines(lesson, second, measured)[0]).toBe('Run step 1 first, then compare.');
});

test('a claim that the run does not bear out says so', () => {
  const measured = new Map([
    ['speed iron', 0.011],
    ['slowest iron', 0],
  ]);
  const [speed, slowest] = claimLines(lesson, first, measured);
  expect(speed).toMatch(/does not bear the answer out\.$/);
  expect(slowest).not.toMatch(/does not bear/);
});
