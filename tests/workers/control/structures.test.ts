import { describe, expect, it } from 'vitest';
import { viscousDrag } from '../../../shared/axis/drag.ts';
import { holdingForce } from '../../../shared/axis/gravity.ts';
import { gainsInStructure } from '../../../shared/axis/loop/loopGains.ts';
import { at } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import { movedMass } from '../../../shared/core/movedMass.ts';
import {
  defaultParameters,
  type ParameterChanges,
  type Parameters,
} from '../../../shared/core/parameters/table.ts';
import { closedLoop } from '../../../workers/analysis/closedLoop.ts';
import { drivenAxis } from '../../../workers/analysis/drivenAxis.ts';
import { linearise } from '../../../workers/analysis/linearise.ts';
import { PositionController } from '../../../workers/analysis/positionController.ts';
import { SampledLoop } from '../../../workers/analysis/sampledLoop.ts';
import { measureSteppedSine } from '../../../workers/identify/steppedSine.ts';
import { type Complex, magnitude, ONE, over, plus, times } from '../../../workers/math/complex.ts';
import { eigenvalues } from '../../../workers/math/eigenvalues.ts';
import { Transfer } from '../../../workers/math/transfer.ts';
import { Axis } from '../../../workers/run/axis.ts';
import { barePreset, bareStanding } from '../analysis/barePreset.ts';
import { expectAgreement, expectTracking, SWEEP } from '../analysis/measuredLoop.ts';
import { bareScene, sceneOf } from '../model/sceneOf.ts';

/** Channel by channel at the samples of the position loop. */
function sampled(
  parameters: Parameters,
  channel: number,
  samples: number,
  meanwhile = (_: Axis, __: number) => {},
) {
  const axis = new Axis(sceneOf(parameters));
  const values: number[] = [];
  while (values.length < samples) {
    if (!axis.atPositionSample) {
      if (!axis.step()) throw new Error(axis.trip?.kind);
      continue;
    }
    meanwhile(axis, values.length);
    if (!axis.step()) throw new Error(axis.trip?.kind);
    values.push(at(axis.record, channel));
  }
  return values;
}

const asCascade = (p: Parameters): Parameters => ({ ...p, ...gainsInStructure(p, 'cascade') });

describe('a cascade', () => {
  // Kvel (1 + 1/(Tn s)) (Kv e − v) multiplied out, with a speed that is not filtered, whose sum is the position. While the set speed
  // changes the two differ by half a sample of it: a sum of speeds is not quite the set position.
  it('is the PID that its gains multiply out to', () => {
    const p = barePreset('tubular', {
      program: 'hold',
      process: 'pulse',
      processForce: 20,
      derivativeTime: 0,
    });
    const one = sampled(p, C.currentCommand, 1500);
    const other = sampled(asCascade(p), C.currentCommand, 1500);
    const peak = Math.max(...one.map(Math.abs));
    expect(peak).toBeGreaterThan(0.1);
    const apart = one.map((current, k) => Math.abs(current - at(other, k)));
    expect(Math.max(...apart) / peak).toBeLessThan(1e-9);
  });

  it('takes over from the PID while the axis stands, without a jolt', () => {
    const p = barePreset('tubular', { program: 'hold', inclination: 0.5, forceBias: 0 });
    const error = sampled(p, C.followingError, 800, (axis, sample) => {
      if (sample === 600) axis.change(gainsInStructure(axis.parameters, 'cascade'));
    });
    expect(Math.max(...error.slice(0, 200).map(Math.abs))).toBeGreaterThan(1e-7);
    expect(Math.max(...error.slice(600).map(Math.abs))).toBeLessThan(
      1.5 * Math.max(...error.slice(550, 600).map(Math.abs)) + 1e-9,
    );
  });

  it('goes no faster than its velocity command allows, and winds nothing up on the way', () => {
    const velocityCommandLimit = 0.02;
    const step = { program: 'step', stepSize: 5e-3, dwell: 0.6, followingErrorLimit: 0.1 } as const;
    const p = asCascade(barePreset('tubular', { ...step }));
    const changes = { ...p, velocityCommandLimit };
    const speed = sampled(changes, C.tableSpeed, 4000);
    expect(Math.max(...speed)).toBeGreaterThan(0.99 * velocityCommandLimit);
    expect(Math.max(...speed)).toBeLessThan(1.35 * velocityCommandLimit);
    const position = sampled(changes, C.tablePosition, 4000);
    const end = at(position, position.length - 1);
    expect(Math.max(...position) - end).toBeLessThan(0.02 * 5e-3);
  });
});

/** A structure of the loop on a drive of the shelf. */
const STRUCTURES: readonly [string, string, (p: Parameters) => ParameterChanges][] = [
  [
    'a cascade with a filtered velocity command',
    'tubular',
    (p) => ({ ...asCascade(p), velocityCommandFilter: 3e-4 }),
  ],
  [
    'a PID with an observer',
    'tubular',
    (p) => ({ observer: true, observerBandwidth: 40, observerMass: movedMass(p) }),
  ],
  [
    'a cascade with an observer and a notch',
    'tubular',
    (p) => ({
      ...asCascade(p),
      observer: true,
      observerBandwidth: 60,
      observerMass: 0.8 * movedMass(p),
      filter1: 'notch',
      filter1Frequency: 700,
    }),
  ],
  [
    'a dual loop of a screw',
    'screw',
    (p) => ({ ...asCascade(p), speedSource: 'motor encoder', motorEncoderResolution: 0 }),
  ],
];

describe.each(STRUCTURES)('%s', (_, preset, structure) => {
  const plain = barePreset(preset, { ...SWEEP, sweepPoints: 8, sweepTime: 3, dwell: 0.2 });
  const p: Parameters = { ...plain, ...structure(plain) };
  const loop = new SampledLoop(p, bareStanding(p));

  it('has the open loop of the analysis when it is measured on the running axis', () => {
    const measured = measureSteppedSine(sceneOf(p));
    expect(measured.ended).toBeNull();
    expectAgreement(measured, loop);
  });

  // With a feedforward of drag so wrong that it shows.
  it('follows a sine as the analysis says', () => {
    expectTracking({ ...p, speedFeedforward: 3000 }, 15);
  });

  // The eigenvalues come from states, the open loop from transfer functions in z: 1 + L(λ) = 0 joins them.
  it('has its eigenvalues where its open loop is −1', () => {
    const axis = drivenAxis(p, linearise(p, bareStanding(p)));
    const controller = new PositionController(p);
    const position = new Transfer(axis.a, axis.command, axis.reading);
    const speed = new Transfer(axis.a, axis.command, axis.speedReading);
    const openLoop = (z: Complex) => {
      const feedback = controller.feedback(z);
      return plus(times(feedback.position, position.first(z)), times(feedback.speed, speed.first(z)));
    };
    const within = eigenvalues(closedLoop(axis, controller))
      .toList()
      .filter((z) => magnitude(z) > 0.8);
    expect(within.length).toBeGreaterThan(3);
    for (const z of within) {
      const value = openLoop(z);
      // Modes that the loop neither sees nor moves stay where the axis has them.
      if (
        position
          .eigenvalues()
          .toList()
          .some((pole) => Math.hypot(pole.re - z.re, pole.im - z.im) < 1e-7)
      )
        continue;
      expect(magnitude(plus(ONE, value)) / (1 + magnitude(value))).toBeLessThan(1e-5);
    }
  });
});

describe('the disturbance observer', () => {
  // Ohnishi, Shibata, Murakami, Motion control for advanced mechatronics, IEEE/ASME Trans. Mechatronics 1(1), 1996 (from memory): with the
  // nominal mass that of the machine, what a load does is multiplied by s/(s + g), and the command sees no difference.
  it('leaves of a load what a first-order high-pass of its bandwidth leaves', () => {
    const f = 20;
    const { parameters: bare } = bareScene({ linkStiffness: 2e9, linkDamping: 1e4 });
    const mass = movedMass(bare);
    const gains = { Kp: 4e5, Ki: 0, Kd: 4e3, derivativeTime: 0, accelerationFeedforward: mass };
    const without: Parameters = { ...bare, ...gains };
    const withIt: Parameters = { ...without, observer: true, observerBandwidth: f, observerMass: mass };
    const one = new SampledLoop(without, bareStanding(without));
    const two = new SampledLoop(withIt, bareStanding(withIt));
    for (const frequency of [0.5, 1, 2, 5, 10]) {
      const w = 2 * Math.PI * frequency;
      const left = magnitude(over(two.compliance(w), one.compliance(w)));
      expect(left / (frequency / Math.hypot(frequency, f))).toBeCloseTo(1, 1);
    }
    // A step of load that a loop without integral gain never takes back.
    expect(one.staticStiffness).toBeCloseTo(4e5, -3);
    expect(two.staticStiffness).toBe(Number.POSITIVE_INFINITY);
  });

  it('cancels a weight once that the force bias carries, and adds nothing to it', () => {
    const p = asCascade(
      barePreset('tubular', { program: 'hold', inclination: 0.5, resetTime: 0, dwell: 0.2 }),
    );
    const withIt: Parameters = { ...p, resetTime: 0, forceBias: holdingForce(p) };
    const watched = { ...withIt, observer: true, observerBandwidth: 40, observerMass: movedMass(p) };
    const atRest = (each: Parameters) => Math.abs(at(sampled(each, C.followingError, 4000), 3999));
    // What it would be if the observer took the bias for a load.
    expect(withIt.forceBias / (withIt.positionLoopGain * withIt.velocityGain)).toBeGreaterThan(1e-5);
    expect(atRest(watched)).toBeLessThan(1e-9);
  });

  it('leaves a table where it is at constant speed, whose drag the feedforward carries', () => {
    const p = asCascade(barePreset('tubular', { program: 'scan', scanSpeed: 0.05, stroke: 0.1 }));
    const changes = { resetTime: 0, observer: true, observerBandwidth: 40, observerMass: movedMass(p) };
    const drag = viscousDrag(p);
    const speed = sampled({ ...p, ...changes, speedFeedforward: drag }, C.setSpeed, 6000);
    const error = sampled({ ...p, ...changes, speedFeedforward: drag }, C.followingError, 6000);
    const lag = (drag * p.scanSpeed) / (p.positionLoopGain * p.velocityGain);
    const scanning = error.filter((_, k) => k > 3000 && Math.abs(at(speed, k)) === p.scanSpeed);
    expect(scanning.length).toBeGreaterThan(1000);
    expect(Math.max(...scanning.map(Math.abs))).toBeLessThan(lag / 10);
  });
});

describe('the delay of the commanded speed', () => {
  // The measured speed lags by T_f and half a sample; without the delay the loop pushes with Kd T a all the while a move accelerates.
  it('keeps a higher damping gain from spoiling the feedforward', () => {
    const { parameters: bare } = bareScene({
      program: 'shuttle',
      stroke: 0.05,
      dwell: 0.1,
      linkStiffness: 2e9,
    });
    const [Kp, Kd] = [2e6, 1e4];
    const gains = {
      Kp,
      Kd,
      Ki: 0,
      derivativeTime: 1e-4,
      accelerationFeedforward: movedMass(bare),
      speedFeedforward: 0,
    };
    const lag = 1e-4 + bare.positionDivider / bare.currentRate / 2;
    const peak = (changes: ParameterChanges) =>
      Math.max(...sampled({ ...bare, ...gains, ...changes }, C.followingError, 1200).map(Math.abs));
    const [plain, delayed] = [peak({}), peak({ setSpeedDelay: lag })];
    expect(delayed).toBeLessThan(plain / 8);
    expect(peak({ Kd: 2.5 * Kd, setSpeedDelay: lag })).toBeLessThan(1.5 * delayed);
    expect(defaultParameters().setSpeedDelay).toBe(0);
  });
});
