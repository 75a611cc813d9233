import { stderr } from 'node:process';
import { afterEach, expect, it, vi } from 'vitest';
import { RunProgress } from '../../../workers/entry/runProgress.ts';

const { isTTY } = stderr;

afterEach(() => {
  vi.restoreAllMocks();
  stderr.isTTY = isTTY;
});

/** What a run of so many seconds writes beside its output, on a terminal or into a file. */
function told(seconds: number, isTerminal: boolean): string {
  let text = '';
  stderr.isTTY = isTerminal;
  vi.spyOn(stderr, 'write').mockImplementation((chunk) => {
    text += String(chunk);
    return true;
  });
  const progress = new RunProgress(seconds);
  for (let time = 0; time < seconds; time += 0.5) progress.take(time);
  progress.end();
  vi.restoreAllMocks();
  return text;
}

it('a long run says on the terminal how far it is, and takes the line away at its end', () => {
  const lines = told(40, true).split('\r').slice(1);
  expect(lines).toEqual(['Simulated 10 of 40 s', 'Simulated 20 of 40 s', 'Simulated 30 of 40 s', '\u001b[K']);
});

it('a short one is done before anyone would look, and a file has no line of it', () => {
  expect(told(19, true)).toBe('');
  expect(told(40, false)).toBe('');
});
