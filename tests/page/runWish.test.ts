import { expect, it } from 'vitest';
import { RunWish } from '../../src/app/runWish.ts';

it('turns round what was ordered, not what an old frame still says', () => {
  const wish = new RunWish();
  expect(wish.toggle('paused')).toBe('running');
  wish.answer('paused');
  expect(wish.toggle('paused')).toBe('paused');
});

it('believes the frames again once one has answered', () => {
  const wish = new RunWish();
  wish.toggle('paused');
  wish.answer('running');
  expect(wish.toggle('tripped')).toBe('running');
});

it('gives up a wish that the axis cannot fulfil', () => {
  const wish = new RunWish();
  wish.toggle('tripped');
  wish.answer('tripped');
  wish.answer('tripped');
  expect(wish.toggle('tripped')).toBe('running');
});
