import { expect, it } from 'vitest';
import { clickerStep } from '../../../src/lessons/clicker.ts';

const stroke = (key: string, held: 'ctrlKey' | 'shiftKey' | 'altKey' | 'metaKey' | null = null) => ({
  key,
  ctrlKey: held === 'ctrlKey',
  shiftKey: held === 'shiftKey',
  altKey: held === 'altKey',
  metaKey: held === 'metaKey',
});

// Presentation remotes send page up and page down, some the arrows. Common practice, no source.
it('a clicker goes on and back, wherever the focus is', () => {
  for (const taken of [false, true]) {
    expect(clickerStep(stroke('PageDown'), taken)).toBe('next');
    expect(clickerStep(stroke('PageUp'), taken)).toBe('back');
  }
});

it('arrows go on and back, unless what has the focus uses them itself', () => {
  expect(clickerStep(stroke('ArrowRight'), false)).toBe('next');
  expect(clickerStep(stroke('ArrowLeft'), false)).toBe('back');
  expect(clickerStep(stroke('ArrowRight'), true)).toBeNull();
  expect(clickerStep(stroke('ArrowLeft'), true)).toBeNull();
});

it('other keys, and those pressed together with another, belong to the page', () => {
  for (const key of ['ArrowUp', 'Home', ' ', 'Enter', 'n'])
    expect(clickerStep(stroke(key), false)).toBeNull();
  for (const held of ['ctrlKey', 'shiftKey', 'altKey', 'metaKey'] as const)
    expect(clickerStep(stroke('PageDown', held), false)).toBeNull();
});
