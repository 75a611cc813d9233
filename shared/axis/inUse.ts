import { MODE_NUMBERS } from '../core/movedMass.ts';
import { isFilterValueInUse } from '../core/parameters/filters.ts';
import type { ParameterName, Parameters } from '../core/parameters/table.ts';
import { compensatesFriction } from './frictionCompensation.ts';
import { hasDryFriction } from './guide.ts';
import { isInStructure } from './loop/loopGains.ts';

type InUse = (p: Parameters) => boolean;

const entries = (inUse: InUse, ...names: ParameterName[]) => names.map((name) => [name, inUse] as const);
const programs =
  (...kinds: Parameters['program'][]): InUse =>
  (p) =>
    kinds.includes(p.program);

const throughStart: InUse = (p) => p.program !== 'list';
const movesUnderLimits = programs('shuttle', 'scan', 'staircase', 'hold', 'step', 'sine');
const sweeps = programs('chirp', 'stepped sine');
const screw: InUse = (p) => p.lead > 0;
const direct: InUse = (p) => p.lead === 0;
const lawOf =
  (...laws: Parameters['fieldLaw'][]): InUse =>
  (p) =>
    direct(p) && laws.includes(p.fieldLaw);

/** When a parameter has a say. One that is not listed always has. What has none is folded away by the panel. */
const IN_USE: ReadonlyMap<ParameterName, InUse> = new Map([
  ...entries((p) => p.speedSource === 'motor encoder', 'motorEncoderResolution'),
  ...entries((p) => p.shaper !== 'none', 'shaperFrequency', 'shaperDamping'),

  ...entries((p) => p.coggingCompensation, 'coggingPosition'),
  ...entries((p) => p.breakawayCompensation > 0, 'breakawaySpeed'),
  ...entries(compensatesFriction, 'compensationSpeed'),

  ...entries(throughStart, 'start'),
  ...entries(programs('shuttle', 'scan'), 'stroke'),
  ...entries(movesUnderLimits, 'speed', 'acceleration', 'jerk'),
  ...entries((p) => !['hold', 'sine', 'list'].includes(p.program), 'dwell'),
  ...entries(programs('scan'), 'scanSpeed'),
  ...entries(programs('sine'), 'sineAmplitude', 'sineFrequency'),
  ...entries(programs('staircase'), 'stairStep', 'stairCount'),
  ...entries(programs('step'), 'stepSize'),
  ...entries(programs('force pulse'), 'pulseForce', 'pulseTime'),
  ...entries(sweeps, 'sweepForce', 'sweepFrom', 'sweepTo', 'sweepTime'),
  ...entries(programs('stepped sine'), 'sweepPoints'),

  ...entries((p) => p.chipCount > 0, 'chipSize', 'cover'),

  ...entries((p) => p.process !== 'none', 'processForce'),
  ...entries((p) => p.process === 'sine' || p.process === 'pulse', 'processFrequency'),
  ...entries((p) => p.process === 'pulse', 'processTime'),

  ...entries(direct, 'forceConstant', 'polePitch'),
  ...entries(screw, 'torqueConstant', 'polePairs', 'rotorInertia', 'screwRigidity', 'nutDrag', 'nutViscous'),
  ...entries(screw, 'backlash', 'screwCapacity', 'screwToAir', 'screwExpansion'),
  ...entries((p) => screw(p) && p.screwRigidity > 0, 'screwSpan'),
  ...entries(screw, 'screwSupport'),
  ...entries((p) => screw(p) && p.screwSupport === 'fixed', 'screwPretension'),
  ...entries(screw, 'nutWear', 'nutPreload'),
  ...entries(hasDryFriction, 'guideDistance'),
  ...entries((p) => p.ripple6 > 0, 'ripple6Phase'),
  ...entries((p) => p.ripple12 > 0, 'ripple12Phase'),
  ...entries((p) => p.motorCount > 1, 'misalignment2'),
  ...entries((p) => p.motorCount > 2, 'misalignment3'),
  ...entries((p) => p.motorCount > 3, 'misalignment4'),

  ...entries(lawOf('gap', 'cosh', 'bessel'), 'airGap', 'nominalGap', 'coilOffset'),
  ...entries(lawOf('gap', 'cosh'), 'recoilPermeability'),
  ...entries(lawOf('gap'), 'magnetHeight'),
  ...entries(direct, 'fieldLaw'),
  ...entries((p) => p.cogging1 > 0, 'cogging1Period', 'cogging1Phase'),
  ...entries((p) => p.cogging2 > 0, 'cogging2Period', 'cogging2Phase'),
  ...entries((p) => p.cogging3 > 0, 'cogging3Period', 'cogging3Phase'),

  ...entries((p) => p.cooling, 'coolantTemperature', 'carrierToCoolant'),
  ...MODE_NUMBERS.flatMap((n) =>
    entries((p) => p[`mode${n}`] !== 'off', `mode${n}Mass`, `mode${n}Frequency`, `mode${n}Damping`),
  ),
  ...entries((p) => p.base, 'baseMass', 'baseFrequency', 'baseDamping'),
]);

export function isInUse(name: ParameterName, p: Parameters): boolean {
  return isInStructure(name, p) && isFilterValueInUse(name, p) && (IN_USE.get(name)?.(p) ?? true);
}
