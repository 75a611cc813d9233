import { describe, expect, it } from 'vitest';
import { sceneById } from '../../../scenes/index.ts';
import { breakawayForce } from '../../../shared/axis/guide.ts';
import { windingToAmbientResistance } from '../../../shared/axis/motor.ts';
import { valueAt } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C, CHANNEL_COUNT } from '../../../shared/core/channels.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { experimentOf, guideNote } from '../../../src/loop/forms/experiment.ts';
import { FIRST_REQUEST, pointOf, requestOf, samePoint } from '../../../src/loop/forms/operatingPoint.ts';
import { hasMoved } from '../../../src/loop/staleness.ts';
import { verdictOf } from '../../../src/loop/verdict.ts';
import { placeOn, power } from '../../../src/plot/interpolate.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { measureSteppedSine } from '../../../workers/identify/steppedSine.ts';
import { expectToRunToItsEnd, planned } from './plannedExperiment.ts';

const named = (name: string) => sceneById(name);
const shuttle = named('mould-shuttle');

describe('the note on the guide', () => {
  const p = shuttle.parameters;
  const sliding = { ...startingPoint(p), friction: 'sliding' } as const;
  const presliding = { ...sliding, friction: 'presliding' } as const;
  const breakaway = breakawayForce(p) + p.nutDrag;

  it('tells of the bristles where a small force is drawn beside a sliding model', () => {
    expect(guideNote(p, sliding, 0.5 * breakaway)).toMatch(/does not break the guide loose.*like a spring/);
    expect(guideNote(p, sliding, 5 * breakaway)).toBeNull();
  });

  it('tells of sliding where a large force is drawn beside a presliding model', () => {
    expect(guideNote(p, presliding, 5 * breakaway)).toMatch(/can break the guide loose/);
    expect(guideNote(p, presliding, 0.1 * breakaway)).toBeNull();
  });
});

describe('the suggested experiment', () => {
  // The long tests go through all scenes.
  it.each(['mould-shuttle'])('is legal and runs to its end: %s', (id) => expectToRunToItsEnd(named(id)));

  // About the crossover friction takes a little of the swing; below, where the loop is stiff, it takes most of it.
  it('slides so far that the measured loop is the one that was analysed, about its crossover', () => {
    const { analysis, experiment } = planned(shuttle, 'sliding', {
      sweepFrom: 80,
      sweepTo: 400,
      sweepTime: 2,
    });
    const { frequency, openLoop } = measureSteppedSine(experiment.scene);
    frequency.forEach((f, k) => {
      const wanted = power(analysis.openLoop.magnitude, placeOn(analysis.frequency, f));
      expect(Math.abs(20 * Math.log10(valueAt(openLoop.magnitude, k) / wanted))).toBeLessThan(1);
    });
  });

  it('bends the bristles only, where presliding is looked at', () => {
    const { analysis, experiment } = planned(shuttle, 'presliding', {
      sweepFrom: 20,
      sweepTo: 150,
      sweepTime: 4,
    });
    const { frequency, openLoop } = measureSteppedSine(experiment.scene);
    frequency.forEach((f, k) => {
      const wanted = power(analysis.openLoop.magnitude, placeOn(analysis.frequency, f));
      expect(Math.abs(20 * Math.log10(valueAt(openLoop.magnitude, k) / wanted))).toBeLessThan(1);
    });
  });

  it('says what cannot be', () => {
    const p = shuttle.parameters;
    const point = startingPoint(p);
    const sweep = { sweepForce: 5, sweepFrom: 500, sweepTo: 100, sweepTime: 5 };
    expect(experimentOf(shuttle, 'chirp', point, sweep)).toMatchObject({
      problem: expect.stringMatching(/Sweep from.*500.*less than .*Sweep to.*100/),
    });
  });
});

describe('the operating point that was kept', () => {
  it('is taken up again', () => {
    const request = { position: 0.05, speed: 0.1, temperature: 'as now', friction: 'presliding' } as const;
    expect(requestOf(JSON.parse(JSON.stringify(request)))).toEqual(request);
    expect(requestOf(JSON.parse(JSON.stringify(FIRST_REQUEST)))).toEqual(FIRST_REQUEST);
  });

  it.each([
    {},
    { position: 'far', speed: 1e9, temperature: 'hot', friction: null },
    { position: Number.NaN, speed: [], temperature: 4, friction: {} },
  ])('does no harm when it is damaged: %j', (kept) => {
    expect(requestOf(kept)).toEqual(FIRST_REQUEST);
  });
});

describe('the operating point', () => {
  const p = shuttle.parameters;
  const now = new Float64Array(CHANNEL_COUNT);
  now[C.tablePosition] = 0.0423;
  now[C.windingTemperature] = 61.3;

  it('is where the table stands while the run is paused, and the start of the scene while it runs', () => {
    expect(pointOf(FIRST_REQUEST, p, now, true).position).toBeCloseTo(0.0423, 9);
    expect(pointOf(FIRST_REQUEST, p, now, false).position).toBe(p.start);
    expect(pointOf(FIRST_REQUEST, p, null, true).position).toBe(p.start);
  });

  it('stays inside the travel, and slides when it moves', () => {
    const point = pointOf(
      { ...FIRST_REQUEST, position: 2, speed: 0.1, friction: 'presliding' },
      p,
      now,
      true,
    );
    expect(point.position).toBe(p.travelMax);
    expect(point.friction).toBe('sliding');
  });

  it('does not change with a breath of warmth', () => {
    const request = { ...FIRST_REQUEST, temperature: 'as now' } as const;
    const warmer = now.slice();
    warmer[C.windingTemperature] = valueAt(warmer, C.windingTemperature) + 0.1;
    expect(samePoint(pointOf(request, p, now, true), pointOf(request, p, warmer, true))).toBe(true);
    warmer[C.windingTemperature] = valueAt(warmer, C.windingTemperature) + 5;
    expect(samePoint(pointOf(request, p, now, true), pointOf(request, p, warmer, true))).toBe(false);
  });

  it('is in balance of heat with the winding at its limit: what leaves the winding leaves the machine', () => {
    const point = pointOf({ ...FIRST_REQUEST, temperature: 'winding at its limit' }, p, now, true);
    expect(point.windingTemperature).toBe(p.windingLimit);
    const flow = p.windingToCarrier * (point.windingTemperature - point.carrierTemperature);
    const away =
      p.carrierToAir * (point.carrierTemperature - p.ambient) +
      p.tableToAir * (point.tableTemperature - p.ambient);
    expect(away / flow).toBeCloseTo(1, 9);
    expect(flow * windingToAmbientResistance(p)).toBeCloseTo(p.windingLimit - p.ambient, 9);
  });
});

describe('a measured loop', () => {
  const p = shuttle.parameters;
  const loopOf = (changes: object) =>
    analyse({ ...p, ...changes }, { ...startingPoint(p), friction: 'sliding' });
  const frequencies = Float64Array.of(20, 100, 900);

  it('is outdated once |L| has moved by a decibel', () => {
    const then = loopOf({});
    // All gains by the same factor: 0.9 and 1.1 dB.
    const scaled = (factor: number) => ({ Kp: p.Kp * factor, Ki: p.Ki * factor, Kd: p.Kd * factor });
    expect(hasMoved(then, loopOf(scaled(10 ** (0.9 / 20))), frequencies)).toBe(false);
    expect(hasMoved(then, loopOf(scaled(10 ** (1.1 / 20))), frequencies)).toBe(true);
  });
});

describe('the verdict', () => {
  const verdict = (name: string, changes = {}) => {
    const p = { ...named(name).parameters, ...changes };
    return verdictOf(analyse(p, { ...startingPoint(p), friction: 'sliding' }).figures);
  };

  it('says margin and place of a good loop', () => {
    expect(verdict('mould-shuttle')).toEqual({
      kind: 'good',
      text: 'Stable. 51° of phase margin at 101 Hz.',
    });
  });

  it('calls an unstable loop so', () => {
    expect(verdict('soft-coil-mounting', { filter1: 'off' })).toMatchObject({
      kind: 'alarm',
      text: expect.stringMatching(/^Unstable: any oscillation grows by .* %/),
    });
  });

  it('warns of a loop that passes −1 closely', () => {
    const { Kp, Ki, Kd } = named('mould-shuttle').parameters;
    expect(verdict('mould-shuttle', { Kp: 4 * Kp, Ki: 4 * Ki, Kd: 4 * Kd })).toMatchObject({
      kind: 'caution',
      text: expect.stringMatching(/\|S\| peaks at/),
    });
  });
});
