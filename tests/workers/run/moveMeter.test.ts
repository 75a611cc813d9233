import { describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C, CHANNEL_COUNT } from '../../../shared/core/channels.ts';
import {
  MOVE_FIGURE_NAMES,
  MOVE_FIGURES,
  moveFigureText,
  worstFigure,
} from '../../../shared/figures/moveFigures.ts';
import type { MoveFigures } from '../../../shared/protocol/axis.ts';
import type { Effort } from '../../../workers/run/effort.ts';
import { measureRun } from '../../../workers/run/measureRun.ts';
import { MoveMeter } from '../../../workers/run/moveMeter.ts';
import { Session } from '../../../workers/run/session.ts';
import { bareScene } from '../model/sceneOf.ts';

type Sampled = Partial<Record<keyof typeof C, number>> & { readonly moving?: boolean };

/** What an axis in this state asks of motor and amplifier. */
function effortOf(record: Float64Array): Effort {
  const [forceCurrent, voltage] = [at(record, C.forceCurrent), at(record, C.voltage)];
  const limit = at(record, C.currentLimit);
  return {
    force: at(record, C.motorForce),
    forceCurrent,
    current: Math.hypot(forceCurrent, at(record, C.fieldCurrent)),
    voltage,
    currentUse: limit > 0 ? at(record, C.currentCommand) / limit : 0,
    voltageUse: voltage / (300 / Math.sqrt(3)),
  };
}

/** Figures of one move whose samples are `sampleAt(k)`, k = 0 … count − 1, `dt` seconds apart; every sample is a period too. */
function measured(
  count: number,
  dt: number,
  sampleAt: (k: number) => Sampled,
  { window = 1e-6, rest = {} }: { window?: number; rest?: Sampled } = {},
): MoveFigures {
  const meter = new MoveMeter(rest.setpoint ?? 0);
  const record = new Float64Array(CHANNEL_COUNT);
  const take = (time: number, { moving = false, ...channels }: Sampled) => {
    const filled = { currentLimit: 20, ...channels };
    record.fill(0);
    for (const [name, value] of Object.entries(filled)) record[C[name as keyof typeof C]] = value;
    record[C.time] = time;
    record[C.followingError] = at(record, C.setpoint) - at(record, C.encoderPosition);
    meter.sample(record, { moving, cycle: 0, position: at(record, C.setpoint) }, window, 0);
    meter.period(effortOf(record));
  };
  take(-dt, rest);
  for (let k = 0; k < count; k++) take(k * dt, sampleAt(k));
  meter.finish(count * dt, 0);
  return meter.last!;
}

/** Unit step of ω²/(s² + 2 ζ ω s + ω²), ω = 1 rad/s. */
function secondOrder(zeta: number, t: number): number {
  if (zeta === 1) return 1 - (1 + t) * Math.exp(-t);
  const damped = Math.sqrt(1 - zeta * zeta);
  return 1 - Math.exp(-zeta * t) * (Math.cos(damped * t) + (zeta / damped) * Math.sin(damped * t));
}

/** The meter on that step, `height` m high, ω t sampled every 0.01. */
function stepFigures(zeta: number, height = 1e-5, window = 0.02 * Math.abs(height)): MoveFigures {
  const dt = 0.01;
  return measured(
    3000,
    dt,
    (k) => ({
      moving: k === 0,
      setpoint: 0.1 + height,
      encoderPosition: 0.1 + height * secondOrder(zeta, k * dt),
    }),
    { window, rest: { setpoint: 0.1, encoderPosition: 0.1 } },
  );
}

describe('a step of the second order', () => {
  // Åström & Murray, Feedback Systems, table of second-order step properties in ch. 6 (from memory): 16 %, 4 %, 0 %.
  it.each([
    [0.5, 16, 0.5],
    [Math.SQRT1_2, 4, 0.5],
    [1, 0, 0.1],
  ])('of damping %f overshoots by %f %%', (zeta, percent, tolerance) => {
    const share = stepFigures(zeta).overshoot! / 1e-5;
    expect(Math.abs(100 * share - percent)).toBeLessThan(tolerance);
  });

  // exp(−πζ/√(1−ζ²)): Franklin, Powell, Emami-Naeini, Feedback Control of Dynamic Systems, ch. 3 (from memory).
  it.each([
    [0.4, 25.38],
    [0.5, 16.3],
    [0.6, 9.478],
    [Math.SQRT1_2, 4.321],
    [0.8, 1.516],
  ])('of damping %f overshoots by %f %% in either direction', (zeta, percent) => {
    for (const height of [1e-5, -3e-6]) {
      const { overshoot } = stepFigures(zeta, height);
      expect(Math.abs((100 * overshoot!) / Math.abs(height) - percent)).toBeLessThan(0.006);
    }
  });

  // Nise, Control Systems Engineering, fig. 4.16: ω t_r from 10 % to 90 %, three decimals.
  it.each([
    [0.1, 1.104],
    [0.2, 1.203],
    [0.3, 1.321],
    [0.4, 1.463],
    [0.5, 1.638],
    [0.6, 1.854],
    [0.7, 2.126],
    [0.8, 2.467],
    [0.9, 2.883],
  ])('of damping %f rises in %f/ω', (zeta, riseTime) => {
    expect(Math.abs(stepFigures(zeta).riseTime! - riseTime)).toBeLessThan(0.0011);
    expect(stepFigures(zeta, -1e-5).riseTime).toBeCloseTo(stepFigures(zeta).riseTime!, 9);
  });

  // The same table of Åström & Murray (from memory): 2 % settling of the critically damped step, 5.8/ω.
  it('of damping 1 settles within 2 % in 5.8/ω', () => {
    expect(Math.abs(stepFigures(1).settlingTime! - 5.8)).toBeLessThan(0.06);
  });

  it('has no rise time before it has got to 90 %', () => {
    const never = measured(100, 0.01, (k) => ({
      moving: k === 0,
      setpoint: 1e-5,
      encoderPosition: 0.89e-5 * (1 - Math.exp(-k)),
    }));
    expect(never.riseTime).toBeNull();
    expect(never.overshoot).toBe(0);
  });

  it('is measured from where the axis stands when a run begins with it', () => {
    const meter = new MoveMeter(0.5);
    const record = new Float64Array(CHANNEL_COUNT);
    for (let k = 0; k <= 100; k++) {
      record[C.time] = k;
      record[C.setpoint] = 1.5;
      record[C.encoderPosition] = 0.5 + k / 100;
      meter.sample(record, { moving: k === 0, cycle: 0, position: 1.5 }, 1, 0);
    }
    meter.finish(101, 0);
    expect(meter.last!.riseTime).toBeCloseTo(80, 9);
  });
});

describe('a profiled move', () => {
  /** A trapezoid: 1 s of acceleration, `cruise` seconds at 2 mm/s, 1 s of braking, 1 s of standstill. */
  const dt = 1e-3;
  const top = 2e-3;
  function trapezoid(cruise: number, speedAt: (sinceCruise: number) => number): MoveFigures {
    let position = 0;
    return measured(Math.round((3 + cruise) / dt), dt, (k) => {
      const t = k * dt;
      const setAcceleration = t < 1 ? top : t < 1 + cruise ? 0 : t < 2 + cruise ? -top : 0;
      const setSpeed = Math.max(Math.min(top * t, top, top * (2 + cruise - t)), 0);
      position += setSpeed * dt;
      return {
        moving: t < 2 + cruise,
        setpoint: position,
        encoderPosition: position + (t < 2 + cruise ? 0 : 3e-7 * Math.exp(-10 * (t - 2 - cruise))),
        setSpeed,
        setAcceleration,
        tableSpeed: setSpeed * (1 + speedAt(t - 1)),
      };
    });
  }

  it('has no rise time, and overshoots after its commanded end', () => {
    const move = trapezoid(10, () => 0);
    expect(move.riseTime).toBeNull();
    expect(move.overshoot).toBeCloseTo(3e-7, 12);
    expect(move.velocityRipplePeak).toBe(0);
  });

  // A sine of amplitude a: 2a from peak to peak, a/√2 rms.
  it.each([0.3, 7, 400])(
    'of %f s at constant speed has the ripple of a sine, without its run-in',
    (cruise) => {
      const amplitude = 0.01;
      const frequency = 20 / cruise;
      const move = trapezoid(cruise, (t) => {
        const inRunIn = t < 0.09 * cruise;
        return inRunIn ? 0.5 : amplitude * Math.sin(2 * Math.PI * frequency * t);
      });
      expect(Math.abs(move.velocityRipplePeak! / (2 * amplitude) - 1)).toBeLessThan(0.02);
      expect(Math.abs(move.velocityRippleRms! / (amplitude / Math.SQRT2) - 1)).toBeLessThan(0.02);
    },
  );

  it('shows a ripple that comes after the run-in', () => {
    const move = trapezoid(10, (t) => (Math.abs(t - 1.5) < 0.01 ? 0.25 : 0));
    expect(move.velocityRipplePeak).toBe(0.25);
  });

  it('has no rise time at the start of a run either, though the encoder reads half a count off', () => {
    const { moves } = measureRun(bareScene({ start: -0.1 - 3e-7, encoderResolution: 1e-6 }), 0.6);
    expect(at(moves, 0).riseTime).toBeNull();
    expect(at(moves, 0).overshoot).not.toBeNull();
  });

  it('is none after the drive was switched on elsewhere: the setpoint is set anew and moves on from there', () => {
    // Off in the first dwell and on in the second: the program went back without the table.
    const session = new Session(bareScene({}));
    const risen: (number | null)[] = [];
    while (session.canStep && session.axis.time < 2.2) {
      const { tick } = session.axis;
      if (tick === 6400) session.change({ drive: 'off' });
      if (tick === 14400) session.change({ drive: 'on' });
      const { count } = session.meter;
      session.step();
      if (session.meter.count > count) risen.push(session.meter.last!.riseTime);
      if (session.recorder.full) session.recorder.hand(null);
    }
    expect(session.recording().events).toHaveLength(2);
    expect(session.axis.trip).toBeNull();
    expect(risen.length).toBeGreaterThan(2);
    expect(risen).toEqual(risen.map(() => null));
  });

  it('that only touches its top speed has no ripple', () => {
    const { moves } = measureRun(bareScene({ stroke: 0.01, speed: 6, acceleration: 10, jerk: 500 }), 0.4);
    expect(at(moves, 0).velocityRipplePeak).toBeNull();
    expect(at(moves, 0).velocityRippleRms).toBeNull();
  });
});

describe('headroom', () => {
  const sample = (channels: Sampled) =>
    measured(10, 1e-3, (k) => ({ moving: true, ...(k === 5 ? channels : {}) }));

  // V_dc/√3: linear range of space-vector modulation (Holmes & Lipo, Pulse Width Modulation for Power Converters, 2003).
  it('of voltage is what is left of 173.2 V on a 300 V bus', () => {
    expect(sample({ voltage: 129.9 }).voltageHeadroom).toBeCloseTo(0.25, 3);
    expect(sample({ voltage: 300 / Math.sqrt(3) }).voltageHeadroom).toBeCloseTo(0, 12);
  });

  it('of current is what the command leaves of the limit of that moment', () => {
    expect(sample({ currentCommand: -15 }).currentHeadroom).toBeCloseTo(0.25, 12);
    expect(sample({ currentCommand: -15, currentLimit: 15 }).currentHeadroom).toBe(0);
    expect(sample({}).currentHeadroom).toBe(1);
  });

  it('is used up, and not more, by an axis that saturates', () => {
    const { moves } = measureRun(
      bareScene({
        acceleration: 100,
        jerk: 1e5,
        peakCurrent: 6,
        continuousCurrent: 6,
        followingErrorLimit: 0.1,
      }),
      0.6,
    );
    expect(at(moves, 0).currentHeadroom).toBe(0);
    const low = measureRun(
      bareScene({ busVoltage: 48, speed: 1.5, acceleration: 20, followingErrorLimit: 0.1, stroke: 0.3 }),
      0.5,
    );
    expect(low.voltageHeadroom).toBeCloseTo(0, 12);
    expect(at(low.moves, 0).voltageHeadroom).toBeCloseTo(0, 12);
  });
});

describe('between two position-loop samples', () => {
  it('a spike of force, current or voltage is not lost', () => {
    const meter = new MoveMeter(0);
    const record = new Float64Array(CHANNEL_COUNT);
    record[C.currentLimit] = 20;
    meter.sample(record, { moving: true, cycle: 0, position: 0 }, 1, 0);
    meter.period(effortOf(record));
    record[C.motorForce] = -77;
    record[C.forceCurrent] = 3;
    record[C.fieldCurrent] = 4;
    record[C.voltage] = 86.6;
    meter.period(effortOf(record));
    record.fill(0);
    meter.period(effortOf(record));
    meter.finish(1, 0);
    const { peakForce, rmsForce, peakCurrent, voltageHeadroom } = meter.last!;
    expect([peakForce, peakCurrent]).toEqual([77, 5]);
    expect(rmsForce).toBeCloseTo(77 / Math.sqrt(3), 12);
    expect(voltageHeadroom).toBeCloseTo(0.5, 3);
  });
});

describe('the table of figures', () => {
  it('defines every figure that the meter gives, once, in words', () => {
    const { index, ...figures } = stepFigures(0.5);
    expect(index).toBe(0);
    expect([...MOVE_FIGURE_NAMES].sort()).toEqual(Object.keys(figures).sort());
    const labels = MOVE_FIGURE_NAMES.map((name) => MOVE_FIGURES[name].label);
    expect(new Set(labels).size).toBe(labels.length);
    for (const name of MOVE_FIGURE_NAMES) expect(MOVE_FIGURES[name].definition).toMatch(/^.{30,}[.]$/);
  });

  it('reads figures in their units, and says when there is none', () => {
    expect(moveFigureText('peakError', 7.84e-6)).toBe('7.84 µm');
    expect(moveFigureText('voltageHeadroom', 0.25)).toBe('25.0 %');
    expect(moveFigureText('settlingTime', null)).toBe('not settled');
    expect(moveFigureText('riseTime', null)).toBe('—');
  });

  it('takes the worst of several moves: one that did not settle, else the largest, of headroom the least', () => {
    const moves = [stepFigures(0.5), stepFigures(1)];
    const unsettled = { ...at(moves, 0), settlingTime: null, riseTime: null, voltageHeadroom: 0.2 };
    expect(worstFigure(moves, 'settlingTime')).toBe(at(moves, 0).settlingTime);
    expect(worstFigure([...moves, unsettled], 'settlingTime')).toBeNull();
    expect(worstFigure([...moves, unsettled], 'riseTime')).toBe(at(moves, 1).riseTime);
    expect(worstFigure([...moves, unsettled], 'voltageHeadroom')).toBe(0.2);
    expect(worstFigure([], 'peakError')).toBeNull();
  });
});
