import { describe, expect, it, vi } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C, CHANNEL_COUNT } from '../../../shared/core/channels.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { NOTICE_TEXTS, tripText } from '../../../shared/figures/tripText.ts';
import { Audit } from '../../../workers/model/audit.ts';
import { Session } from '../../../workers/run/session.ts';
import { bareScene } from '../model/sceneOf.ts';

const scene = bareScene({ encoderNoise: 2e-10, encoderResolution: 1e-9, sealFriction: 3, sealStiction: 4 });

/** Everything a run recorded, however it was cut into frames. */
class Tape {
  readonly parts: Float64Array[] = [];
  take(session: Session): void {
    const { bins, count } = session.recorder.hand(null);
    this.parts.push(bins.slice(0, count * 2 * CHANNEL_COUNT));
  }
  get all(): Float64Array {
    const all = new Float64Array(this.parts.reduce((n, part) => n + part.length, 0));
    let at = 0;
    for (const part of this.parts) {
      all.set(part, at);
      at += part.length;
    }
    return all;
  }
}

function runTo(session: Session, tick: number, tape: Tape, frameEvery = 500): void {
  while (session.axis.tick < tick) {
    session.step();
    if (session.axis.tick % frameEvery === 0) tape.take(session);
  }
}

describe('session', () => {
  it('gives bit-identical telemetry whatever the frames', () => {
    const [a, b] = [new Session(scene), new Session(scene)];
    const [tapeA, tapeB] = [new Tape(), new Tape()];
    runTo(a, 4000, tapeA, 1000);
    runTo(b, 4000, tapeB, 77);
    tapeA.take(a);
    tapeB.take(b);
    expect(tapeA.all.length).toBe(1999 * 2 * CHANNEL_COUNT);
    expect(tapeB.all).toEqual(tapeA.all);
  });

  it('differs when the seed does', () => {
    const [a, b] = [new Session(scene), new Session(bareScene({ ...scene.parameters, seed: 2 }))];
    const [tapeA, tapeB] = [new Tape(), new Tape()];
    runTo(a, 1000, tapeA);
    runTo(b, 1000, tapeB);
    expect(tapeB.all).not.toEqual(tapeA.all);
  });

  it('says while it runs that its figures are not to be trusted where its energy does not balance', () => {
    const { axis } = new Session(scene);
    const said = () => axis.notices.map((notice) => NOTICE_TEXTS[notice]).join();
    expect(said()).toBe('');
    const holds = vi.spyOn(Audit.prototype, 'holds', 'get').mockReturnValue(false);
    expect(said()).toMatch(/energy account .* does not balance: its figures are not to be trusted/);
    holds.mockRestore();
  });

  it('replays a recorded session exactly, gains, hand and all', () => {
    const live = new Session(scene);
    const tape = new Tape();
    runTo(live, 1500, tape);
    live.change({ Kp: 1e6, filter1: 'notch' });
    runTo(live, 2501, tape);
    live.hand(0.01);
    runTo(live, 3200, tape);
    live.hand(null);
    live.change({ payload: 9 });
    runTo(live, 4500, tape);
    tape.take(live);

    const again = Session.replay(JSON.parse(JSON.stringify(live.recording())));
    const tapeAgain = new Tape();
    while (again.canStep) {
      again.step();
      if (again.axis.tick % 900 === 0) tapeAgain.take(again);
    }
    tapeAgain.take(again);
    expect(again.ended).toBe(true);
    expect(tapeAgain.all).toEqual(tape.all);
  });

  it('goes on in fixed steps within 5 nm of the usual engine, from the next sample on, and replays the change of engine exactly', () => {
    const quiet = bareScene({ sealFriction: 3, sealStiction: 4 });
    const [live, usual] = [new Session(quiet), new Session(quiet)];
    const [tape, usualTape] = [new Tape(), new Tape()];
    const pulled = (session: Session, on: Tape) => {
      runTo(session, 2000, on);
      session.hand(0.01);
      runTo(session, 3200, on);
      session.hand(null);
      runTo(session, 4500, on);
      on.take(session);
    };
    runTo(live, 1001, tape);
    live.useEngine('batch');
    expect(live.axis.engine).toBe('odex');
    live.step();
    live.step();
    expect(live.axis.engine).toBe('batch');
    pulled(live, tape);
    pulled(usual, usualTape);
    const low = 2 * C.tablePosition;
    expect(tape.all.length).toBe(usualTape.all.length);
    for (let at = low; at < tape.all.length; at += 2 * CHANNEL_COUNT)
      expect(Math.abs((tape.all[at] ?? 0) - (usualTape.all[at] ?? 0))).toBeLessThan(5e-9);

    const recording = live.recording();
    expect(recording).toMatchObject({ engine: 'odex', ticks: 4500 });
    expect(recording.events[0]).toEqual({ tick: 1002, kind: 'engine', engine: 'batch' });
    const again = Session.replay(JSON.parse(JSON.stringify(recording)));
    // What the page asks for meanwhile waits for the next run.
    again.useEngine('odex');
    const tapeAgain = new Tape();
    while (again.canStep) {
      again.step();
      if (again.axis.tick % 900 === 0) tapeAgain.take(again);
    }
    tapeAgain.take(again);
    expect(tapeAgain.all).toEqual(tape.all);
  });

  it('begins later runs with the engine that was asked for, and says so in their recording', () => {
    const session = new Session(scene);
    session.useEngine('batch');
    session.change({ motorCount: 2 });
    expect(session.axis.engine).toBe('batch');
    runTo(session, 400, new Tape());
    const recording = session.recording();
    expect(recording).toMatchObject({ engine: 'batch', events: [] });
    expect(Session.replay(recording).axis.engine).toBe('batch');
  });

  it('hands out every move that finishes once, however it is cut into frames', () => {
    // 5 mm at 100 m/s² and 20 000 m/s³ take 2√(s/a) + a/j = 19 ms, and 1 ms to stand; 3000 periods of 16 kHz are 188 ms.
    const quick = bareScene({ stroke: 0.005, speed: 2, acceleration: 100, jerk: 2e4, dwell: 1e-3 });
    const session = new Session(quick);
    const indices: number[][] = [];
    for (const ticks of [100, 3000, 1, 2000]) {
      for (let k = 0; k < ticks; k++) session.step();
      indices.push(session.takeFinished().map(({ index }) => index));
      session.recorder.hand(null);
    }
    expect(indices[0]).toEqual([]);
    expect(at(indices, 1).length).toBeGreaterThan(3);
    expect(indices[2]).toEqual([]);
    expect(indices.flat()).toEqual(Array.from({ length: session.meter.count }, (_, k) => k));
    session.reset();
    expect(session.takeFinished()).toEqual([]);
  });

  it('applies a change at the next position-loop sample, not before and not later', () => {
    const session = new Session(bareScene({ positionDivider: 4 }));
    const tape = new Tape();
    runTo(session, 801, tape);
    session.change({ Kp: 5e5 });
    runTo(session, 804, tape);
    expect(session.axis.parameters.Kp).not.toBe(5e5);
    session.step();
    expect(session.axis.parameters.Kp).toBe(5e5);
    expect(session.recording().events).toEqual([{ tick: 804, kind: 'change', changes: { Kp: 5e5 } }]);
  });

  it('starts a new run when the structure of the model changes', () => {
    const session = new Session(scene);
    runTo(session, 100, new Tape());
    const { run } = session;
    const changes: ParameterChanges = { motorCount: 2 };
    session.change(changes);
    expect(session.run).toBe(run + 1);
    expect(session.axis.tick).toBe(0);
    expect(session.axis.parameters.motorCount).toBe(2);
  });

  it('takes changes before the first tick into the scene: the table stands at a new start, and a recording has them', () => {
    const session = new Session(scene);
    session.change({ start: scene.parameters.start + 0.05, Kd: 9000 });
    expect(at(session.axis.record, C.tablePosition)).toBeCloseTo(scene.parameters.start + 0.05, 9);
    const { scene: recorded, events } = session.recording();
    expect(recorded.parameters).toMatchObject({ Kd: 9000, start: scene.parameters.start + 0.05 });
    expect(events).toEqual([]);
    runTo(session, 400, new Tape());
    expect(session.axis.trip).toBeNull();
  });

  it('records a change that still waits for its sample', () => {
    const session = new Session(scene);
    runTo(session, 401, new Tape());
    session.change({ Kd: 9000 });
    expect(session.recording().events).toEqual([{ tick: 401, kind: 'change', changes: { Kd: 9000 } }]);
  });

  it('keeps a spike of one current-loop period in its bin', () => {
    const session = new Session(bareScene({ positionDivider: 16 }));
    for (let k = 0; k < 16 * 50; k++) session.step();
    const { axis, recorder } = session;
    axis.step();
    axis.record[C.forceCurrent] = 999;
    recorder.take(axis.record);
    axis.step();
    recorder.take(axis.record);
    recorder.closeBin();
    const { bins, count } = recorder.hand(null);
    expect(bins[((count - 1) * CHANNEL_COUNT + C.forceCurrent) * 2 + 1]).toBe(999);
  });

  it('waits rather than drops when nobody takes the bins', () => {
    const session = new Session(bareScene({ positionDivider: 1 }));
    while (session.canStep) session.step();
    expect(session.recorder.count).toBe(session.recorder.capacity);
    session.recorder.hand(null);
    expect(session.canStep).toBe(true);
  });

  it('settles a move and measures it', () => {
    const session = new Session(bareScene({ window: 1e-6 }));
    const tape = new Tape();
    while (session.meter.count < 2) {
      session.step();
      if (session.axis.tick % 500 === 0) tape.take(session);
    }
    const move = session.meter.last!;
    expect(move.settlingTime).not.toBeNull();
    expect(move.settlingTime!).toBeLessThan(0.1);
    // RMS force of a move with mass M: at least that of its acceleration, at most its peak.
    expect(move.rmsForce).toBeGreaterThan(0);
    expect(move.rmsForce).toBeLessThan(move.peakForce);
  });
});

describe('trips', () => {
  const run = (changes: ParameterChanges, seconds = 1) => {
    const session = new Session(bareScene(changes));
    const tape = new Tape();
    while (session.canStep && session.axis.time < seconds) {
      session.step();
      if (session.axis.tick % 500 === 0) tape.take(session);
    }
    tape.take(session);
    return { trip: session.axis.trip, all: tape.all };
  };

  it.each([
    ['following error', { Kp: 1e3, Kd: 10, Ki: 0, accelerationFeedforward: 0 }],
    ['oscillation', { Kp: 5e8, Kd: 2e5 }],
    ['over-travel', { stroke: 0.5, travelMax: 0.3 }],
    ['over-speed', { speedLimit: 0.3 }],
    ['over-temperature', { windingStart: 129.999, carrierStart: 150, foldbackTemperature: 40 }],
  ] satisfies [string, ParameterChanges][])('stops with a plain reason: %s %j', (kind, changes) => {
    const { trip, all } = run(changes);
    expect(trip?.kind).toBe(kind);
    expect(trip && tripText(trip, 'metric').length).toBeGreaterThan(20);
    expect(all.every(Number.isFinite)).toBe(true);
  });

  // Half a second of every legal way to switch the sliding friction off while breakaway is left, and fields that would overflow.
  it.each<ParameterChanges>([
    { frictionCoefficient: 0, sealFriction: 0, stictionCoefficient: 0.01, sealStiction: 5 },
    { frictionCoefficient: 0, sealFriction: 0, sealStiction: 20, drive: 'off' },
    { frictionCoefficient: 0, sealFriction: 0, sealStiction: 20, inclination: Math.PI / 2, drive: 'shorted' },
    { lead: 0.001, coilOffset: 0.001, fieldLaw: 'bessel', drive: 'off' },
    { lead: 5e-4, polePairs: 20, coilOffset: 0.003, fieldLaw: 'cosh', drive: 'off' },
  ])('blames no gain for what the machine is: %j', (changes) => {
    const { trip, all } = run(changes, 0.5);
    expect(all.every(Number.isFinite)).toBe(true);
    if (trip) expect(tripText(trip, 'metric')).not.toMatch(/gain|unstable/);
  });

  it.each<ParameterChanges>([
    { Kp: 1e3, Kd: 10, Ki: 0, accelerationFeedforward: 0 },
    { Kp: 5e8, Kd: 2e5 },
    { speedLimit: 0.05 },
  ])('come again in a replay, at the same moment: %j', (changes) => {
    const live = new Session(bareScene());
    while (live.axis.tick < 400) live.step();
    live.change(changes);
    while (live.canStep && live.axis.time < 2) live.step();
    live.change({ Kp: 2e6 });
    expect(live.axis.trip).not.toBeNull();
    const again = Session.replay(JSON.parse(JSON.stringify(live.recording())));
    while (again.canStep) again.step();
    expect(again.axis.trip).toEqual(live.axis.trip);
    expect(again.ended).toBe(true);
  });

  it('calls it divergence when the state leaves what can be computed', () => {
    const { trip, all } = run({
      Kp: 1e9,
      Kd: 1e7,
      followingErrorLimit: 0.1,
      speedLimit: 20,
      linkStiffness: 2e9,
      peakCurrent: 1000,
      continuousCurrent: 500,
      busVoltage: 800,
      currentBandwidth: 6000,
      inductance: 2e-5,
    });
    expect(trip).not.toBeNull();
    expect(all.every(Number.isFinite)).toBe(true);
  });
});
