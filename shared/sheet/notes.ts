import { GRAVITY } from '../axis/gravity.ts';
import { parameterWarnings } from '../axis/warnings.ts';
import { ranged } from '../core/format.ts';
import { loadSideMass, motorSideMass } from '../core/movedMass.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { Scene } from '../core/scene.ts';
import { onPage, sentenceText } from '../core/sentence.ts';
import { loadWarnings } from '../figures/loadWarnings.ts';
import { NOTICE_TEXTS, tripText } from '../figures/tripText.ts';
import type { MoveFigures, Notice, Trip } from '../protocol/axis.ts';
import type { Basis } from './basis.ts';
import type { LoopOfSheet } from './marginRows.ts';

/** Assumptions behind the numbers of the sheet. */
export function assumptionTexts(
  { driveType, parameters: p }: Scene,
  { count, forcePerAmp, forcePerAmpRms }: Basis,
): string[] {
  const motors = p.motorCount === 1 ? 'one motor' : `${p.motorCount} motors in parallel`;
  const side = p.encoderSide === 'load' ? 'on the table' : 'on the motor';
  return [
    `Simulated, not measured: drive type ${driveType}, ${motors} on one amplifier, ${ranged(loadSideMass(p), 'kg')} of table and payload and ${ranged(motorSideMass(p), 'kg')} on the motor side.`,
    `Force constant at 20 °C: ${forcePerAmp.text} (current amplitude), equal to ${forcePerAmpRms.text} (RMS current). Check which of the two the drive expects: they differ by √2.`,
    count === null
      ? `The encoder ${side} is not rounded to counts in this scene, so there are no gains per count.`
      : `One count is ${count.text} of travel, encoder ${side}. A drive that counts quadrature edges or interpolates may define a count differently.`,
    'Positive force moves the axis towards increasing counts. With the wrong sign the loop runs away at full force.',
    `Temperatures: ambient ${ranged(p.ambient, '°C')}, winding at the start ${ranged(p.windingStart, '°C')}. Warm magnets give less force per ampere.`,
    ...(p.inclination === 0
      ? []
      : [
          `The axis is inclined by ${ranged(p.inclination, '°')}, gravity ${GRAVITY} m/s², counterbalance ${ranged(p.counterbalance, 'N')}.`,
        ]),
    'The model has one compliant link between motor and table and, if enabled, a base on mounts. Other resonances, of frame, cables or tool, are not modelled: measure them on the machine before raising the gains.',
  ];
}

/** Precautions before and during the first use of the gains on a machine. Common practice, no source. */
export function cautionTexts(p: Parameters): string[] {
  return [
    'Only a qualified person may enable the axis for the first time, under the codes that apply where the machine stands. This sheet is not a risk assessment.',
    'Start with low limits: about a tenth of the peak current, a tenth of the speed and a tight following-error limit. Raise them one at a time.',
    `Start with a loop ten times slower: ${slowGains(p)}. The damping ratio stays the same. Before that, with the power off, check by hand in which direction the encoder counts up. Then check that positive current pushes in that direction.`,
    'Guard the axis: nobody within reach, end stops and limit switches proven, emergency stop tested before the first move.',
    ...(p.inclination === 0
      ? [
          'An unpowered table is free to move and can crush. If the axis is ever inclined, brake or prop it first.',
        ]
      : [
          'This axis is inclined: it drops when the drive trips or is switched off. Brake or prop it, and never reach under it.',
        ]),
    p.lead > 0
      ? 'A screw driven into its end stop breaks: prove the limit switches at creep speed.'
      : 'Open magnet tracks attract steel with great force, even without power: keep tools, watches, pacemakers and fingers away.',
    'The DC bus stays live after switch-off. Wait as long as the drive’s manual says, measure, then touch.',
    'Real drives round, scale and limit their gains. Read every gain back from the drive, and compare a small step with the simulated one before going further.',
  ];
}

/** What makes the loop ten times slower, in the symbols of its structure: a PID is multiplied out, a cascade is not. */
function slowGains(p: Parameters): string {
  const integral = p.resetTime > 0 ? ', ten times T_n' : '';
  const gains =
    p.controller === 'PID'
      ? 'a tenth of K_d, a hundredth of K_p, no K_i'
      : `a tenth of K_vel, a tenth of K_v${integral}`;
  const observer = p.observer ? ', no observer' : '';
  const weight = p.inclination === 0 ? '' : ' but F_b, which carries the weight';
  return `${gains}${observer}, and no force feedforward${weight}`;
}

/** Reasons not to use these gains. */
export function warningTexts(p: Parameters, loops: readonly LoopOfSheet[]): string[] {
  return [
    ...(loops.length === 0
      ? ['No margins were calculated for this sheet. Check the frequency response before entering the gains.']
      : loops.every(({ figures }) => figures.stable)
        ? []
        : ['With these gains the simulated loop is UNSTABLE. Do not enter them into a drive.']),
    ...parameterWarnings(p).map((warning) => sentenceText(warning, onPage('metric'))),
  ];
}

interface Run {
  readonly move: MoveFigures | null;
  readonly notices: readonly Notice[];
  readonly trip: Trip | null;
}

/** What went wrong in the run that the gains were tried in. */
export function runWarnings(p: Parameters, { move, notices, trip }: Run): string[] {
  return [
    ...(trip ? [`The drive tripped in this run. ${tripText(trip, 'metric')}`] : []),
    ...notices.map((notice) => NOTICE_TEXTS[notice]),
    ...(move ? loadWarnings(p, move) : []),
  ];
}
