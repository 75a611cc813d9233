import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { nominalDiameter } from '../../../shared/axis/screw.ts';
import { at, present } from '../../../shared/core/at.ts';
import { inUnit, ranged } from '../../../shared/core/format.ts';
import { sizeCandidate } from '../../../shared/sizing/sizeCandidate.ts';
import type { CandidateChoice } from '../../../shared/study/candidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { defaultJobValues, type Job, type JobValues } from '../../../shared/study/job.ts';

const jobOf = (changes: Partial<JobValues> = {}): Job => ({
  title: 'Shuttle',
  values: { ...defaultJobValues(), ...changes },
  moves: [],
});

function sizing(preset: string, job = jobOf(), changes: Partial<CandidateChoice> = {}) {
  const sized = sizeCandidate(
    job,
    candidateScene(job, { preset, motorCount: 1, own: {}, gains: null, ...changes }, PRESETS),
  );
  const figure = (id: string) => present(sized.figures.find((each) => each.id === id));
  return { ...sized, figure, value: (id: string) => figure(id).value };
}

// Worked out by hand from the figures of drive and job: 5 kg on a table of 8 kg, 0.25 m in 0.4 s, 0.2 s of rest.
describe('the tubular motor on the default job', () => {
  const { value } = sizing('tubular');

  it('moves as the one-third trapezoid with rounded corners does', () => {
    expect(value('speed')).toBeCloseTo((1.5 * 0.25) / 0.4, 12);
    expect(value('acceleration')).toBeCloseTo(0.9375 / (0.4 / 3 - 0.4 / 12), 9);
    expect(value('dutyFactor')).toBeCloseTo(0.4 / 0.6, 9);
    expect(value('mass')).toBeCloseTo(5 + 8 + 2.6, 12);
  });

  it('needs most where it has nearly sped up', () => {
    // The speed there lacks a t_j/2 of 0.9375 m/s: 0.78125 m/s. Guide: 0.004 of 13 kg and 3 N; 15 N·s/m.
    const guide = 0.004 * 13 * 9.80665 + 3;
    const force = 15.6 * 9.375 + 15 * 0.78125 + guide;
    expect(value('peakForce')).toBeCloseTo(force, 6);
    // 60 N/A rms is 42.426 N/A of amplitude; the magnets of a room at 22 °C have lost 0.22 %.
    const perAmp = (60 / Math.SQRT2) * (1 - 0.0011 * 2);
    expect(value('peakCurrent')).toBeCloseTo(force / perAmp, 6);
    expect(value('peakUtilisation')).toBeCloseTo(force / (perAmp * 30), 6);
    expect(value('currentHeadroom')).toBeCloseTo(1 - force / perAmp / 30, 6);
  });

  it('keeps its winding where loss and flow of heat are in balance', () => {
    const warm = value('windingTemperature');
    // 4.5 Ω line to line is 2.25 Ω a phase; 10 W/K, then 2.36 W/K and 0.6 W/K in series with 4 W/K. The guide adds a little.
    const loss = 1.5 * 2.25 * (1 + 0.00393 * (warm - 20)) * value('rmsCurrent') ** 2;
    const rise = loss * (1 / 10 + 1 / (2.36 + 1 / (1 / 0.6 + 1 / 4)));
    expect(warm - 22 - rise).toBeGreaterThan(0);
    expect(warm - 22 - rise).toBeLessThan(0.3);
  });

  it('needs the voltage of back-EMF, resistance and inductance', () => {
    const speed = 0.78125;
    const current = value('peakCurrent');
    const hot = 2.25 * (1 + 0.00393 * 110);
    const emf = ((60 / Math.SQRT2) * (1 - 0.0011 * 2) * speed) / 1.5;
    const turning = ((Math.PI / 0.03) * speed * 0.0065) / 2;
    expect(value('voltage')).toBeCloseTo(Math.hypot(turning * current, hot * current + emf), 6);
    expect(value('voltageHeadroom')).toBeCloseTo(1 - value('voltage') / (325 / Math.sqrt(3)), 9);
  });
});

describe('a screw', () => {
  const job = jobOf();
  const screw = sizing('screw', job);

  it('refers its inertia and torque through its lead', () => {
    const { parameters: p } = candidateScene(
      job,
      { preset: 'screw', motorCount: 1, own: {}, gains: null },
      PRESETS,
    );
    const ratio = (2 * Math.PI) / 0.02;
    expect(screw.value('mass')).toBeCloseTo(13 + 0.05 + p.rotorInertia * ratio ** 2, 9);
    expect(screw.value('inertiaMatch')).toBeCloseTo(13.05 / ratio ** 2 / p.rotorInertia, 9);
    expect(screw.value('rmsTorque')).toBeCloseTo(screw.value('rmsForce') / ratio, 12);
    expect(screw.value('peakTorque')).toBeCloseTo(screw.value('peakForce') / ratio, 12);
    expect(screw.value('screwSpeed')).toBeCloseTo(0.9375 / 0.02, 9);
  });

  // Raising or lowering, thrust, drag and inertia add up to what the motor gives: no torque is lost on the way.
  it.each([1, -1])('closes its balance of torque with the load going up and down: %d', (way) => {
    const lifted = sizing('screw', jobOf({ inclination: (way * Math.PI) / 2, payload: 20 }));
    const { numbers } = lifted.figure('peakTorque');
    const [, sum, whole] = present(/= ([\d.]+) N·m; with cogging ([\d.]+) N·m/.exec(numbers));
    const cogging = (3 * 0.02) / (2 * Math.PI);
    expect(Math.abs(Number(whole) - Number(sum) - cogging)).toBeLessThan(0.02);
  });

  it('whirls when it is long, and its critical speed falls with the square of its length', () => {
    const long = sizing('screw', jobOf({ travel: 2, stroke: 0.25 }));
    const limit = (each: typeof long) => present(each.figure('screwSpeed').limit).value;
    expect(limit(screw) / limit(long)).toBeCloseTo((2.3 / 0.7) ** 2, 6);
    expect(long.figure('screwSpeed').standing).toBe('beyond');
    expect(long.reasons.join(' ')).toMatch(/whirling/);
  });

  // Blevins: λ = 4.7300, 3.9266, 1.8751; Euler's cases: 0.5 l, 0.699 l, 2 l.
  it('turns faster and is pressed harder the better its ends are held', () => {
    const held = (support: NonNullable<CandidateChoice['parts']>['support'] & string) =>
      sizing('screw', job, { parts: { support } });
    const limits = (id: string) =>
      (['fixed', 'supported', 'free'] as const).map((ends) => present(held(ends).figure(id).limit).value);
    const [fixed, supported, free] = limits('screwSpeed') as [number, number, number];
    expect(fixed / supported).toBeCloseTo((4.73 / 3.9266) ** 2, 9);
    expect(free / supported).toBeCloseTo((1.8751 / 3.9266) ** 2, 9);
    const [pressed, , long] = limits('screwLoad') as [number, number, number];
    expect(pressed / long).toBeCloseTo(16, 9);
    expect(held('free').figure('screwLoad').formula).toContain('(2 l_n)²');
    expect(held('fixed').figure('screwSpeed').formula).toContain('λ = 4.73');
  });

  it('is softest midway between two fixed bearings, and stretched loads them until it is warm', () => {
    const choice = { preset: 'screw', motorCount: 1, own: {}, gains: null };
    const { parameters: p } = candidateScene(job, choice, PRESETS);
    const stretched = sizing('screw', job, { parts: { support: 'stretched3' } });
    const series = 1 / (1 / p.linkStiffness + (2 * p.screwSpan) / (4 * p.screwRigidity));
    expect(stretched.value('stiffness') / series).toBeCloseTo(1, 9);
    expect(stretched.value('stiffness')).toBeGreaterThan(screw.value('stiffness'));
    // E A α ϑ, and the thrust of the nut.
    const load = p.screwRigidity * p.screwExpansion * 3 + stretched.value('screwLoad');
    expect(stretched.value('screwBearingLoad')).toBeCloseTo(load, 6);
    const drift = sizing('screw', jobOf({ growthLimit: 5e-6 }), { parts: { support: 'stretched3' } });
    const kelvin = inUnit(5e-6 / drift.value('growthPerKelvin') + 3, 'K');
    expect(drift.figure('growthPerKelvin').note).toContain(`is reached at ${kelvin}`);
    expect(screw.figures.map(({ id }) => id)).not.toContain('screwBearingLoad');
  });

  it('keeps a limit that it reads equal to: length in diameters, life, counts in the window', () => {
    const { parameters } = candidateScene(
      job,
      { preset: 'screw', motorCount: 1, own: {}, gains: null },
      PRESETS,
    );
    // Of the screw 0.3 m are beyond the travel; 60.04 diameters read as 60.0.
    const slender = (diameters: number) =>
      sizing('screw', jobOf({ travel: diameters * nominalDiameter(parameters) - 0.3 })).figure('slenderness');
    expect(slender(60.04)).toMatchObject({ standing: 'close' });
    expect(slender(60.04).value).toBeGreaterThan(60);
    expect(slender(60.1).standing).toBe('beyond');

    const life = screw.value('nutLife') / 3600 / 250 / 8;
    const years = (share: number) => sizing('screw', jobOf({ years: share * life })).figure('nutLife');
    const { value } = years(1);
    expect(years(1.001).limit?.value).toBeGreaterThan(value);
    expect(years(1.0001).standing).toBe('close');
    expect(years(1.02).standing).toBe('beyond');

    // 1 nm a count: five of them are 5 nm.
    const counts = (window: number) => sizing('tubular', jobOf({ window })).figure('resolution').standing;
    expect(counts(4.999e-9)).toBe('close');
    expect(counts(4.97e-9)).toBe('beyond');
  });

  it('alone has figures of a shaft', () => {
    expect(sizing('flat').figures.some(({ id }) => id.startsWith('screw'))).toBe(false);
    const unstated = sizing('screw', job, { own: { screwRigidity: 0 } });
    expect(unstated.figures.map(({ id }) => id)).not.toContain('screwSpeed');
    expect(unstated.figures.map(({ id }) => id)).toContain('rmsTorque');
  });
});

describe('process force beside the motion', () => {
  // 100 N for 10 ms, 20 times a second: RMS 100 √0.2 N; as a sine 100/√2 N. Hardly any motion beside it.
  const quiet: Partial<JobValues> = {
    stroke: 1e-4,
    moveTime: 60,
    dwell: 0,
    processForce: 100,
    processFrequency: 20,
  };
  const friction = (each: ReturnType<typeof sizing>) => each.value('friction');

  it('is counted with what it swings by', () => {
    const pulse = sizing('tubular', jobOf({ ...quiet, process: 'pulse', processTime: 0.01 }));
    expect(pulse.value('rmsForce')).toBeCloseTo(Math.hypot(100 * Math.sqrt(0.2), friction(pulse)), 1);
    expect(pulse.value('peakForce')).toBeCloseTo(100 + friction(pulse), 1);
    const sine = sizing('tubular', jobOf({ ...quiet, process: 'sine' }));
    expect(sine.value('rmsForce')).toBeCloseTo(Math.hypot(100 / Math.SQRT2, friction(sine)), 1);
    const feed = sizing('tubular', jobOf({ ...quiet, process: 'feed' }));
    expect(feed.value('rmsForce')).toBeCloseTo(100 + friction(feed), 1);
  });
});

describe('standing', () => {
  const needed = sizing('flat').value('voltage') * Math.sqrt(3);
  const onBus = (busVoltage: number) => sizing('flat', jobOf({ busVoltage }));

  it.each([
    [0.8, 'good'],
    [0.9, 'close'],
    [1.1, 'beyond'],
  ] as const)('of a figure that takes %d of its limit', (share, standing) => {
    const sized = onBus(needed / share);
    expect(sized.figure('voltage').standing).toBe(standing);
    expect(sized.figure('voltageHeadroom').standing).toBe(standing);
    expect(sized.passes).toBe(standing !== 'beyond');
    expect(sized.reasons).toHaveLength(standing === 'beyond' ? 1 : 0);
  });

  it('is close where the drive begins to lower its current, and beyond where there is no end to the heat', () => {
    const { foldbackTemperature, windingLimit } = present(PRESETS.flat).parameters;
    const hot = sizing('flat', jobOf({ inclination: Math.PI / 2, payload: 13 }));
    expect(hot.value('windingTemperature')).toBeGreaterThan(present(foldbackTemperature));
    expect(hot.value('windingTemperature')).toBeLessThan(present(windingLimit));
    expect(hot.figure('windingTemperature').standing).toBe('close');
    const endless = sizing('flat', jobOf({ inclination: Math.PI / 2, payload: 80 }));
    expect(endless.value('windingTemperature')).toBe(Infinity);
    expect(endless.figure('windingTemperature').standing).toBe('beyond');
    expect(endless.reasons.join(' ')).toMatch(/no steady state/);
  });
});

describe('the envelope', () => {
  it('has the voltage circle as its edge', () => {
    const { envelope } = sizing('flat');
    const p = present(PRESETS.flat).parameters;
    const magnet = 1 - 0.0011 * 2;
    const hot = (present(p.resistance) / 2) * (1 + 0.00393 * (present(p.windingLimit) - 20));
    const k = Math.round(0.98 * (envelope.speed.length - 2));
    const [speed, force] = [at(envelope.speed, k), at(envelope.peak, k)];
    // The current behind that force, by halving, must take all of the voltage.
    const perAmp = (present(p.forceConstant) / Math.SQRT2) * magnet;
    let [low, high] = [0, present(p.peakCurrent)];
    for (let n = 0; n < 60; n++) {
      const middle = (low + high) / 2;
      if ((perAmp * middle) / Math.hypot(1, middle / present(p.saturationCurrent)) < force) low = middle;
      else high = middle;
    }
    const reactance = (Math.PI / present(p.polePitch)) * speed * (present(p.inductance) / 2);
    const voltage = Math.hypot(reactance * low, hot * low + (perAmp * speed) / 1.5);
    expect(low).toBeLessThan(0.9 * present(p.peakCurrent));
    expect(voltage).toBeCloseTo(325 / Math.sqrt(3), 6);
  });

  it('has the job inside for a drive that passes, and twice the force for two motors', () => {
    const one = sizing('tubular');
    const two = sizing('tubular', jobOf(), { motorCount: 2 });
    expect(at(two.envelope.peak, 0) / at(one.envelope.peak, 0)).toBeCloseTo(2, 9);
    expect(at(two.envelope.continuous, 0) / at(one.envelope.continuous, 0)).toBeCloseTo(2, 9);
    expect(one.envelope.speed.every((each, k) => k === 0 || each >= at(one.envelope.speed, k - 1))).toBe(
      true,
    );
    expect(Math.max(...one.envelope.trajectory.map(({ force }) => force))).toBeCloseTo(
      one.value('peakForce'),
      6,
    );
    expect(one.envelope.rms.force).toBe(one.value('rmsForce'));
  });
});

// A figure that cannot be checked with pencil and paper is none.
describe.each(Object.keys(PRESETS))('the calculations of %s', (preset) => {
  it('end in the value that is shown', () => {
    for (const { id, value, unit, formula, numbers, note } of sizing(preset).figures) {
      const shown = [ranged(value, unit), inUnit(value, unit)];
      expect(
        shown.some((text) => numbers.includes(text)),
        `${id}: ${numbers}`,
      ).toBe(true);
      expect(formula, id).not.toBe('');
      expect(note, id).toMatch(/\.$/);
    }
  });

  it.each([
    { stroke: 1e-4, moveTime: 60 },
    { motion: 'move list' },
    { inclination: -Math.PI / 2, dwell: 60 },
    { busVoltage: 12, payload: 2000 },
    { process: 'pulse', processForce: -300 },
  ] as const)('are whole sentences on an extreme job: %o', (changes) => {
    const { figures, reasons, envelope } = sizing(preset, jobOf(changes));
    const texts = figures.flatMap(({ formula, numbers, note }) => [formula, numbers, note]);
    for (const text of [...texts, ...reasons]) expect(text).not.toMatch(/NaN|Infinity|undefined|null/);
    expect(reasons.join(' ')).not.toMatch(/—/);
    for (const { value, id } of figures) expect(value, id).not.toBeNaN();
    expect([...envelope.peak, ...envelope.continuous].every((force) => force >= 0)).toBe(true);
  });
});
