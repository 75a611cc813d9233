import { continuousForce, motorConstants } from '../axis/motor.ts';
import { unitLength } from '../axis/motorSize.ts';
import { present } from '../core/at.ts';
import { presetById } from '../core/preset.ts';
import type { Presets, Scene } from '../core/scene.ts';
import type { Unit } from '../core/units.ts';
import type { CandidateChoice } from '../study/candidate.ts';
import type { JobValues } from '../study/job.ts';
import { type Sizing, sizingValue } from './sizing.ts';

/** A drive with what pencil and paper say of it on the job. */
export interface SizedDrive {
  readonly scene: Scene;
  readonly sizing: Sizing;
}

/** What drives can be made alike in. */
interface Measure {
  /** Behind 'alike in' and 'at equal': 'continuous force'. */
  readonly label: string;
  readonly unit: Unit;
  /** In SI; null where the drive has no such thing: a screw has no coil unit along the travel. */
  readonly of: (drive: SizedDrive) => number | null;
}

const isScrew = ({ scene }: SizedDrive) => scene.parameters.lead > 0;

export const COMPARABLE: Readonly<Record<JobValues['comparableBy'], Measure>> = {
  'continuous force': {
    label: 'continuous force',
    unit: 'N',
    of: ({ scene }) => continuousForce(scene.parameters),
  },
  utilisation: {
    label: 'share of the continuous force used',
    unit: '%',
    of: ({ sizing }) => sizingValue(sizing, 'continuousUtilisation'),
  },
  'installed length': {
    label: 'installed length of the coil units',
    unit: 'mm',
    of: (drive) => {
      const { driveType, parameters: p } = drive.scene;
      return isScrew(drive) ? null : p.motorCount * unitLength(driveType, p);
    },
  },
  'coil mass': {
    label: 'mass of the coil units',
    unit: 'kg',
    of: (drive) =>
      isScrew(drive) ? null : drive.scene.parameters.motorCount * drive.scene.parameters.coilMass,
  },
  'copper loss': {
    label: 'copper loss',
    unit: 'W',
    of: ({ sizing }) => sizingValue(sizing, 'copperLoss') ?? Infinity,
  },
  'winding temperature': {
    label: 'rise of the winding over the room',
    unit: 'K',
    of: ({ scene, sizing }) => present(sizingValue(sizing, 'windingTemperature')) - scene.parameters.ambient,
  },
};

/** Measures that differ by less are alike. */
const ALIKE = 0.1;

/** How far a measure is from another, as a factor of at least 1. */
export function apart(a: number, b: number): number {
  return Math.max(a, b) / Math.min(a, b);
}

export function isAlike(a: number, b: number): boolean {
  return apart(a, b) <= 1 + ALIKE;
}

/** Continuous force of all motors of a candidate as its datasheet states it, N. */
export function ratedForce({ preset, motorCount, own }: CandidateChoice, presets: Presets): number {
  return motorCount * (own.continuousForce ?? presetById(preset, presets).parameters.continuousForce ?? 0);
}

/** The definitions under which motor constants are set against each other. */
export const SCALED_BY = ['installed length', 'coil mass', 'continuous force'] as const;

/**
 * K_m² of a drive over that of another when both are made alike in a measure, as by putting more of the same motors in parallel:
 * K_m², force, length and mass of a coil unit all grow in proportion. For a given force the copper losses stand the other way round.
 * Null for a screw, whose motor does not grow along the travel.
 */
export function scaledConstants(
  one: SizedDrive,
  other: SizedDrive,
  by: (typeof SCALED_BY)[number],
): number | null {
  if (isScrew(one) || isScrew(other)) return null;
  const each = (drive: SizedDrive) => {
    const p = drive.scene.parameters;
    return (p.motorCount * motorConstants(p).motorConstant ** 2) / present(COMPARABLE[by].of(drive));
  };
  return each(one) / each(other);
}
