import { expect, test } from 'vitest';
import { parameterWarnings } from '../../../shared/axis/warnings.ts';
import { defaultParameters, type Parameters } from '../../../shared/core/parameters/table.ts';
import { sentenceText } from '../../../shared/core/sentence.ts';

const warned = (changes: Partial<Parameters>) =>
  parameterWarnings({ ...defaultParameters(), ...changes }).map((each) =>
    sentenceText(each, { names: 'name', units: 'metric' }),
  );

test('the defaults give no warning', () => {
  expect(warned({})).toEqual([]);
});

// K_f,rms/K_e,LL,rms = √3: power balance 3 E I = F v; Krishnan, Permanent Magnet Synchronous and Brushless DC Motor Drives,
// 2010, ch. 3. For K_f = 50 N/A the fitting back-EMF is 28.868 V·s/m line to line.
test('back-EMF and force constant of different motors', () => {
  expect(warned({ forceConstant: 50, backEmfConstant: 28.868 })).toEqual([]);
  expect(warned({ forceConstant: 50, backEmfConstant: 28.868 * 1.049 })).toEqual([]);
  expect(warned({ forceConstant: 50, backEmfConstant: 28.868 * 1.06 })[0]).toMatch(
    /^backEmfConstant \(30\.6 V·s\/m\) is 6\.0 % above the value that matches forceConstant, 28\.9 V·s\/m/,
  );
  expect(warned({ forceConstant: 50, backEmfConstant: 28.868 * 0.9 })[0]).toMatch(/is 10 % below/);
});

// Kt 0.7 N·m/A on a lead of 10 mm is 0.7·2π/0.01 = 439.8 N/A, so 253.9 V·s/m.
test('the back-EMF of a screw drive is per speed of its table', () => {
  const screw = { lead: 0.01, torqueConstant: 0.7, speed: 0.5 };
  expect(warned({ ...screw, backEmfConstant: 253.9 })).toEqual([]);
  expect(warned({ ...screw, backEmfConstant: 28.9 })[0]).toMatch(
    /the value that matches torqueConstant, 254 V·s\/m/,
  );
});

// Weight of 1.2 + 8 + 5 kg on the standard acceleration of free fall, 9.80665 m/s²: 139.25 N.
test('a vertical axis whose weight nothing holds', () => {
  const vertical = { inclination: Math.PI / 2 };
  expect(warned(vertical)[0]).toMatch(/needs 139 N to hold its position and forceBias gives 0\.00 N/);
  expect(warned({ ...vertical, forceBias: 139.25 })).toEqual([]);
  expect(warned({ ...vertical, counterbalance: 139.25 })).toEqual([]);
  expect(warned({ ...vertical, counterbalance: 100, forceBias: 39.25 })).toEqual([]);
  expect(warned({ ...vertical, counterbalance: 139.25, forceBias: 139.25 })).toHaveLength(1);
  expect(warned({ ...vertical, drive: 'off' })).toEqual([]);
});

// The rotor of a screw adds inertia, not weight: 8 + 5 kg and a nut of 1.2 kg still weigh 139.25 N.
test('a turning screw weighs nothing along its axis', () => {
  const screw = { inclination: Math.PI / 2, lead: 0.01, rotorInertia: 3e-4, speed: 0.5 };
  expect(warned({ ...screw, forceBias: 139.25 })).toEqual([]);
});

test('a current loop too fast for its rate', () => {
  expect(warned({ currentRate: 16000, currentBandwidth: 1600 })).toEqual([]);
  expect(warned({ currentRate: 16000, currentBandwidth: 1700 })[0]).toMatch(/^currentBandwidth .* 36°/);
});

// Amplitude of the phase back-EMF: K_f,pk/1.5 = (50/√2)/1.5 = 23.57 V per m/s; linear range of the vector V_dc/√3 = 27.7 V at 48 V
// (Holtz, Pulsewidth modulation: a survey, IEEE Trans. Ind. Electronics 39(5), 1992, from memory): 1.176 m/s.
test('a commanded speed beyond the bus voltage', () => {
  expect(warned({ busVoltage: 48, speed: 1.17 })).toEqual([]);
  expect(warned({ busVoltage: 48, speed: 1.18 })[0]).toMatch(/reaches the bus voltage at 1\.18 m\/s/);
});

test('a commanded speed that trips', () => {
  expect(warned({ speedLimit: 0.9 })[0]).toMatch(/reaches speedLimit \(0\.900 m\/s\)/);
  expect(warned({ speedLimit: 0.9, program: 'sine', sineAmplitude: 0.1, sineFrequency: 2 })[0]).toMatch(
    /1\.26 m\/s/,
  );
  expect(warned({ speedLimit: 0.9, program: 'hold' })).toEqual([]);
});

test('a back-EMF that is off by a usual confusion says by which', () => {
  const off = (factor: number) => warned({ forceConstant: 50, backEmfConstant: 28.868 * factor })[0];
  expect(off(Math.SQRT2)).toContain('The factor is √2: one of them is given for peak values, not RMS.');
  expect(off(1 / Math.sqrt(3))).toContain(
    'The factor is √3: the back-EMF is given for one phase, not line to line.',
  );
  expect(off(1.2)).toContain('Check both: line to line, RMS.');
});

// By hand, with round numbers: R_th = 1/5 + 1/(1 + 0) = 1.2 K/W, 108 K of rise are 90 W; K_m at 20 °C of 50 N/A RMS on 5 Ω line to line
// is 50/√7.5 = 18.26 N/√W; copper at 130 °C has 1.4323 times its resistance: F = 18.26 √(90/1.4323) = 144.7 N.
test('a continuous force that winding and thermal resistance do not give', () => {
  const heat = { windingToCarrier: 5, carrierToAir: 1, carrierToTable: 0, windingLimit: 130 };
  const motor = { forceConstant: 50, resistance: 5 };
  expect(warned({ ...motor, ...heat, continuousForce: 145 })).toEqual([]);
  expect(warned({ ...motor, ...heat, continuousForce: 120 })).toEqual([]);
  const [warning] = warned({ ...motor, ...heat, continuousForce: 290 });
  expect(warning).toMatch(
    /^continuousForce \(290 N\) contradicts .* 1\.20 K\/W to air: .* reaches 130 °C at 145 N/,
  );
  // Twice the force needs a quarter of the resistance.
  expect(warning).toMatch(/would need 0\.299 K\/W/);
});
