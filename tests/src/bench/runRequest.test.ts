import { expect, it } from 'vitest';
import { RunRequest } from '../../../src/bench/runRequest.ts';

it('turns round what was ordered, not what an old frame still says', () => {
  const request = new RunRequest();
  expect(request.toggle('paused')).toBe('running');
  request.answer('paused');
  expect(request.toggle('paused')).toBe('paused');
});

it('believes the frames again once one has answered', () => {
  const request = new RunRequest();
  request.toggle('paused');
  request.answer('running');
  expect(request.toggle('tripped')).toBe('running');
});

it('gives up a wish that the axis cannot fulfil', () => {
  const request = new RunRequest();
  request.toggle('tripped');
  request.answer('tripped');
  request.answer('tripped');
  expect(request.toggle('tripped')).toBe('running');
});
