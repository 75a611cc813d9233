import { describe, expect, it } from 'vitest';
import { Moment } from '../../../src/sideBySide/moment.ts';

describe('the moment that is looked at', () => {
  it('is the present until one is held', () => {
    const moment = new Moment();
    expect(moment.at(3)).toBe(3);
    moment.hold(2, 1, 3);
    expect(moment.at(3)).toBe(2);
    expect(moment.at(9)).toBe(2);
    moment.followLive();
    expect(moment.live).toBe(true);
    expect(moment.at(9)).toBe(9);
  });

  it('stays within what is kept', () => {
    const moment = new Moment();
    moment.hold(0.2, 1, 3);
    expect(moment.at(3)).toBe(1);
    moment.hold(7, 1, 3);
    expect(moment.at(3)).toBe(3);
  });

  it('goes in steps, and past the latest back to the present', () => {
    const moment = new Moment();
    moment.step(-0.5, 1, 3);
    expect(moment.at(3)).toBe(2.5);
    moment.step(-9, 1, 3);
    expect(moment.at(3)).toBe(1);
    moment.step(1.5, 1, 3);
    expect(moment.live).toBe(false);
    moment.step(0.5, 1, 3);
    expect(moment.live).toBe(true);
  });
});
