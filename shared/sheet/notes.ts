import { GRAVITY } from '../axis/gravity.ts';
import { loadSideMass, motorSideMass } from '../axis/motor.ts';
import { parameterWarnings } from '../axis/warnings.ts';
import { ranged } from '../core/format.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { Scene } from '../core/scene.ts';
import { onPage, sentenceText } from '../core/sentence.ts';
import type { Basis } from './basis.ts';
import type { LoopOfSheet } from './marginRows.ts';

/** What the numbers of the sheet take for granted. */
export function assumptionTexts(
  { driveType, parameters: p }: Scene,
  { count, forcePerAmp, forcePerAmpRms }: Basis,
): string[] {
  const motors = p.motorCount === 1 ? 'one motor' : `${p.motorCount} motors in parallel`;
  const side = p.encoderSide === 'load' ? 'on the table' : 'on the motor';
  return [
    `Simulated, not measured: drive of the form ${driveType}, ${motors} on one amplifier, ${ranged(loadSideMass(p), 'kg')} of table and payload and ${ranged(motorSideMass(p), 'kg')} on the motor side.`,
    `Force per ampere at 20 °C: ${forcePerAmp.text} of amplitude, which is ${forcePerAmpRms.text} rms. Find out which of the two the drive means: they are a factor of √2 apart.`,
    count === null
      ? `The encoder ${side} is not rounded to counts in this scene, so there are no gains per count.`
      : `One count is ${count.text} of travel, encoder ${side}. A drive that counts quadrature edges or interpolated periods may have another count.`,
    'Positive force drives towards rising counts. A wrong sign makes the loop run away at full force.',
    `Temperatures: room ${ranged(p.ambient, '°C')}, winding at the start ${ranged(p.windingStart, '°C')}. A warm magnet gives less force per ampere.`,
    ...(p.inclination === 0
      ? []
      : [
          `The axis rises by ${ranged(p.inclination, '°')} with gravity taken as ${GRAVITY} m/s², counterbalance ${ranged(p.counterbalance, 'N')}.`,
        ]),
    'The model has one link between motor and table and, if it is switched on, a base on mounts. Resonances beyond these, of frame, cables or tool, are not in it: look for them on the machine before raising the gains.',
  ];
}

/** What to mind before and while the gains meet a real machine. Common practice, no source. */
export function cautionTexts(p: Parameters): string[] {
  return [
    'The first enabling is for a qualified person, under the codes that hold where the machine stands. This sheet is no risk assessment.',
    'Begin with low limits: about a tenth of the peak current, a tenth of the speed and a small window for the following error. Raise them one at a time.',
    'Begin with a loop ten times slower: a tenth of K_d, a hundredth of K_p, no K_i, no feedforward, which leaves the damping as it is. Check before, by hand and unpowered, which way the encoder counts up, and that positive current pushes that way.',
    'Guard the axis: nobody within reach, end stops and limit switches proven, the emergency stop tried before the first move.',
    ...(p.inclination === 0
      ? [
          'An unpowered table is free to move and pinches. If the axis ever stands inclined, brake or prop it first.',
        ]
      : [
          'This axis is inclined: it falls when the drive trips or is switched off. Brake it or prop it, and never reach under it.',
        ]),
    p.lead > 0
      ? 'A screw driven into its end stop breaks: prove the limit switches at creeping speed.'
      : 'Open magnet tracks pull steel with great force, without any power: keep tools, watches, pacemakers and fingers away.',
    'The DC bus stays live after switching off. Wait as long as the drive asks, measure, then touch.',
    'Real drives round, scale and saturate their gains. Read every gain back from the drive, and compare a small step with the simulated one before going on.',
  ];
}

/** What speaks against these very gains. */
export function warningTexts(p: Parameters, loops: readonly LoopOfSheet[]): string[] {
  return [
    ...(loops.length === 0
      ? [
          'No margins were worked out for this sheet. Look at the frequency response before entering the gains.',
        ]
      : loops.every(({ figures }) => figures.stable)
        ? []
        : ['With these gains the simulated loop is UNSTABLE. Do not enter them into a drive.']),
    ...parameterWarnings(p).map((warning) => sentenceText(warning, onPage('metric'))),
  ];
}
