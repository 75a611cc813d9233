import { describe, expect, it } from 'vitest';
import { Pacer } from '../../../workers/entry/pacer.ts';
import { Session } from '../../../workers/run/session.ts';
import { bareScene } from '../model/sceneOf.ts';

/** A machine on which one tick takes `tickCost` ms; time passes only by ticks and by `wait`. */
function machine(timeScale: number, tickCost: number, isEventful = (_: Session) => false) {
  const session = new Session(bareScene());
  const pacer = new Pacer();
  let now = 0;
  const paced = {
    session,
    mayStep: () => {
      now += tickCost;
      return session.canStep;
    },
    isEventful: () => isEventful(session),
  };
  pacer.timeScale = timeScale;
  pacer.start(0);
  return {
    session,
    pacer,
    get now() {
      return now;
    },
    wait(ms: number) {
      now += ms;
      const behind = pacer.pump(paced, () => now);
      session.recorder.hand(null);
      return behind;
    },
  };
}

describe('pacer', () => {
  it('keeps real time on a fast machine', () => {
    const m = machine(1, 1e-4);
    while (m.now < 1000) m.wait(4);
    expect(Math.abs(m.session.axis.time - m.now / 1000)).toBeLessThan(0.005);
    expect(Math.abs(m.pacer.achieved - 1)).toBeLessThan(0.15);
    expect(m.pacer.lost).toBe(0);
  });

  it('keeps a slow motion of 1/1000, tick by tick', () => {
    const m = machine(1e-3, 1e-4);
    while (m.now < 10000) m.wait(4);
    expect(m.session.axis.tick).toBe(Math.floor((0.01 * 16000 * m.now) / 10000));
  });

  it('reports what it cannot keep up with instead of hiding it', () => {
    const m = machine(1, 0.25);
    while (m.now < 4000) m.wait(0.5);
    const simulated = m.session.axis.time;
    expect(m.pacer.achieved).toBeLessThan(0.5);
    // Simulated, lost and still to be caught up with make up the whole of the wall clock.
    expect(Math.abs(m.now / 1000 - simulated - m.pacer.lost)).toBeLessThan(0.12);
    expect(m.pacer.lost).toBeGreaterThan(1);
  });

  it('catches up a short stall and counts a long one as lost', () => {
    const m = machine(1, 1e-4);
    m.wait(80);
    for (let k = 0; k < 50; k++) m.wait(4);
    expect(m.pacer.lost).toBe(0);
    expect(Math.abs(m.session.axis.time - m.now / 1000)).toBeLessThan(0.005);
    m.wait(5000);
    for (let k = 0; k < 50; k++) m.wait(4);
    expect(Math.abs(m.pacer.lost - 4.9)).toBeLessThan(0.05);
  });

  it('goes to the time it is led to and waits there, whatever the clock says', () => {
    const m = machine(1, 1e-4);
    m.pacer.until = 0.01;
    m.wait(0.001);
    // 16 000 periods a second: 160 of them, and not one more for all the time in the world.
    expect(m.session.axis.tick).toBe(160);
    expect(m.wait(1000)).toBe(false);
    expect(m.session.axis.tick).toBe(160);
    m.pacer.until = 0.01 + 1.5 / 16000;
    m.wait(4);
    expect(m.session.axis.tick).toBe(161);
  });

  it('never goes back when it is led to a time that has passed', () => {
    const m = machine(1, 1e-4);
    m.pacer.until = 0.01;
    m.wait(4);
    m.pacer.until = 0.005;
    expect(m.wait(4)).toBe(false);
    expect(m.session.axis.tick).toBe(160);
  });

  it('says that it is behind while a led run has not arrived', () => {
    const m = machine(1, 0.25);
    m.pacer.until = 0.01;
    expect(m.wait(1)).toBe(true);
    while (m.wait(1));
    expect(m.session.axis.tick).toBe(160);
    expect(m.pacer.lost).toBe(0);
  });

  it('goes by the clock again once it is started', () => {
    const m = machine(1, 1e-4);
    m.pacer.until = 0.01;
    m.wait(1000);
    m.pacer.start(m.now);
    const from = m.now;
    while (m.now < from + 1000) m.wait(4);
    expect(Math.abs(m.session.axis.time - 0.01 - (m.now - from) / 1000)).toBeLessThan(0.005);
  });

  it.each([1, 5, Number.POSITIVE_INFINITY])('asked for %f, shows an event at 1/20 of real time', (pace) => {
    const from = 0.05;
    const m = machine(pace, 1e-4, ({ axis }) => axis.time >= from && axis.time < from + 0.05);
    while (m.session.axis.time < from) m.wait(1);
    // It is noticed within a batch of ticks, however fast it was.
    expect(m.session.axis.time).toBeLessThan(from + 0.0015);
    expect(m.pacer.isSlow).toBe(true);
    const began = m.now;
    while (m.pacer.isSlow) m.wait(1);
    expect(Math.abs(m.now - began - 20 * 50)).toBeLessThan(50);
    expect(m.pacer.lost).toBe(0);
    const ended = m.session.axis.time;
    m.wait(10);
    expect(m.session.axis.time - ended).toBeGreaterThan(0.005);
  });

  it('stops at an event on its way to a time it is led to', () => {
    const m = machine(1, 1e-4, ({ axis }) => axis.time >= 0.01);
    m.pacer.until = 0.1;
    expect(m.wait(1)).toBe(false);
    expect(m.session.axis.time).toBeLessThan(0.0115);
    expect(m.pacer.isSlow).toBe(true);
  });

  it('goes as fast as it goes when asked to', () => {
    const m = machine(Number.POSITIVE_INFINITY, 0.01);
    for (let k = 0; k < 100; k++) expect(m.wait(0.1)).toBe(true);
    expect(m.pacer.achieved).toBeGreaterThan(3);
    expect(m.pacer.lost).toBe(0);
  });
});
