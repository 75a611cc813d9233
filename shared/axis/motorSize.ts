import { at } from '../core/at.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { DriveType } from '../core/scene.ts';
import { nominalDiameter, STEEL_DENSITY } from './screw.ts';

/**
 * Sizes of a motor that its parameters imply: masses at the density of their material, magnets at their pitch. What no parameter states
 * (wall thicknesses, clearances) follows common practice in proportion, no source. SI.
 */

export const ALUMINIUM = 2700;
/** Sintered neodymium-iron-boron, kg/m³ (handbook value). */
const MAGNET = 7500;
/** Mean densities of potted coil units: copper and resin; copper, iron and resin. */
const IRONLESS_UNIT = 5500;
const IRON_UNIT = 6500;

export interface Size {
  /** Along the axis, up, across. */
  readonly length: number;
  readonly height: number;
  readonly width: number;
}

const clamp = (x: number, low: number, high: number) => Math.min(Math.max(x, low), high);

/** Length of a coil unit in whole groups of `group` metres, from its mass per metre. */
function groups(mass: number, massPerMetre: number, group: number, max: number): number {
  return clamp(Math.round(mass / massPerMetre / group), 1, max);
}

/** Least clearance that is drawn, m. */
const TOUCHING = 1e-4;

/** A clearance at the nominal gap becomes as much wider as the air gap is. */
function fitted(clearance: number, p: Parameters): number {
  return Math.max(clearance + (p.airGap - p.nominalGap), TOUCHING);
}

export interface TubularSize {
  readonly driveType: 'tubular';
  readonly shaftRadius: number;
  readonly coilInner: number;
  readonly coilOuter: number;
  readonly finOuter: number;
  readonly length: number;
  /** Radial, from shaft to coils. */
  readonly gap: number;
  /** Coils along the unit, three to a pole pitch. */
  readonly coils: number;
  readonly coilPitch: number;
}

export function tubularSize(p: Parameters): TubularSize {
  const tau = p.polePitch;
  const shaftRadius = clamp(0.42 * tau, 0.003, 0.03);
  const clearance = clamp(0.04 * tau, 0.0005, 0.0015);
  const depth = clamp(0.46 * tau, 0.004, 0.03);
  // The winding is the one that fits the nominal gap, whatever gap it then runs at.
  const bore = shaftRadius + clearance;
  const massPerMetre = IRONLESS_UNIT * Math.PI * ((bore + depth) ** 2 - bore ** 2);
  const gap = fitted(clearance, p);
  const coilInner = shaftRadius + gap;
  const coilOuter = coilInner + depth;
  const poles = Math.max(groups(p.coilMass, massPerMetre, tau, 16), 2);
  return {
    driveType: 'tubular',
    shaftRadius,
    coilInner,
    coilOuter,
    finOuter: 1.13 * coilOuter,
    length: poles * tau,
    gap,
    coils: 3 * poles,
    coilPitch: tau / 3,
  };
}

export interface ChannelSize {
  readonly driveType: 'u-channel';
  readonly magnet: Size;
  readonly wall: number;
  /** On either side of the blade. */
  readonly gap: number;
  readonly bladeWidth: number;
  readonly channelHeight: number;
  readonly channelWidth: number;
  readonly header: Size;
  readonly length: number;
  readonly coils: number;
  readonly coilPitch: number;
}

/** Between blade and magnets at the nominal gap, m. */
const BLADE_CLEARANCE = 0.0008;

export function channelSize(p: Parameters): ChannelSize {
  const tau = p.polePitch;
  const height = clamp(1.7 * tau, 0.02, 0.09);
  const magnet = { length: 0.94 * tau, height, width: clamp(0.2 * tau, 0.003, 0.012) };
  const bladeWidth = clamp(0.2 * tau, 0.003, 0.012);
  const wall = clamp(0.3 * tau, 0.005, 0.018);
  const gap = fitted(BLADE_CLEARANCE, p);
  const channelWidth = 2 * (wall + magnet.width) + bladeWidth + 2 * gap;
  const header = {
    length: 0,
    height: 0.3 * height,
    width: 0.62 * (channelWidth - 2 * (gap - BLADE_CLEARANCE)),
  };
  const massPerMetre = IRONLESS_UNIT * height * bladeWidth + ALUMINIUM * header.height * header.width;
  const threes = groups(p.coilMass, massPerMetre, 4 * tau, 6);
  const length = threes * 4 * tau;
  return {
    driveType: 'u-channel',
    magnet,
    wall,
    gap,
    bladeWidth,
    channelHeight: height + 1.2 * wall,
    channelWidth,
    header: { ...header, length },
    length,
    coils: 3 * threes,
    coilPitch: (4 * tau) / 3,
  };
}

export interface FlatSize {
  readonly driveType: 'flat';
  readonly magnet: Size;
  readonly backIron: number;
  readonly gap: number;
  readonly unitHeight: number;
  readonly unitWidth: number;
  readonly length: number;
  readonly coils: number;
  readonly coilPitch: number;
}

export function flatSize(p: Parameters): FlatSize {
  const tau = p.polePitch;
  const unitHeight = clamp(0.03 + 0.4 * tau, 0.025, 0.07);
  // Two and a half times as long as wide, then whole groups of three coils over four poles.
  const area = p.coilMass / (IRON_UNIT * unitHeight);
  const unitWidth = clamp(Math.sqrt(area / 2.5), 0.04, 0.3);
  const threes = groups(p.coilMass, IRON_UNIT * unitHeight * unitWidth, 4 * tau, 6);
  return {
    driveType: 'flat',
    magnet: { length: 0.8 * tau, height: clamp(p.magnetHeight, 0.002, 0.012), width: 0.9 * unitWidth },
    backIron: clamp(0.35 * tau, 0.005, 0.015),
    gap: p.airGap,
    unitHeight,
    unitWidth,
    length: threes * 4 * tau,
    coils: 3 * threes,
    coilPitch: (4 * tau) / 3,
  };
}

export interface ScrewSize {
  readonly driveType: 'screw';
  readonly radius: number;
  readonly nutRadius: number;
  /** Nut length, along the axis. */
  readonly length: number;
  /** Side and length of the motor. */
  readonly motorSide: number;
  readonly motorLength: number;
  /** Teeth of the stator, one coil each. */
  readonly coils: number;
}

function screwSize(p: Parameters): ScrewSize {
  const lead = Math.max(p.lead, 5e-4);
  const diameter = clamp(nominalDiameter(p) || Math.max(0.016, 1.2 * lead), 0.006, 0.1);
  const torque = (p.continuousForce * lead) / (2 * Math.PI);
  const motorSide = clamp(0.058 * Math.cbrt(torque), 0.03, 0.2);
  return {
    driveType: 'screw',
    radius: diameter / 2,
    nutRadius: 0.85 * diameter + 0.002,
    length: clamp(Math.max(2.4 * diameter, 3 * lead), 0.02, 0.25),
    motorSide,
    motorLength: 1.5 * motorSide,
    coils: 3 * p.polePairs,
  };
}

export type MotorSize = TubularSize | ChannelSize | FlatSize | ScrewSize;

export function motorSize(driveType: DriveType, p: Parameters): MotorSize {
  switch (driveType) {
    case 'tubular':
      return tubularSize(p);
    case 'u-channel':
      return channelSize(p);
    case 'flat':
      return flatSize(p);
    case 'screw':
      return screwSize(p);
  }
}

/** Which track each motor runs on. Ironless motors stand beside the table, the others under it. */
const TRACKS: Record<DriveType, readonly (readonly number[])[]> = {
  tubular: [[0], [0, 1], [0, 0, 1], [0, 0, 1, 1]],
  'u-channel': [[0], [0, 1], [0, 0, 1], [0, 0, 1, 1]],
  flat: [[0], [0, 0], [0, 0, 1], [0, 0, 1, 1]],
  screw: [[0], [0, 1], [0, 1, 2], [0, 1, 2, 3]],
};

/** The track that each motor runs on, from 0: motors in parallel stand beside each other, then behind each other. */
export function motorTracks(driveType: DriveType, motorCount: number): readonly number[] {
  return at(TRACKS[driveType], motorCount - 1);
}

/** Length of the coil unit or nut along the axis, m. */
export function unitLength(driveType: DriveType, p: Parameters): number {
  return motorSize(driveType, p).length;
}

/** Mass of a metre of what lies along the travel, kg/m: magnet rod, magnet channel, magnet plate, or screw shaft. */
export function trackMass(driveType: DriveType, p: Parameters): number {
  const size = motorSize(driveType, p);
  switch (size.driveType) {
    case 'tubular':
      return MAGNET * Math.PI * size.shaftRadius ** 2;
    case 'u-channel': {
      const { magnet, wall, channelHeight, channelWidth } = size;
      const magnets = 2 * magnet.height * magnet.width * (magnet.length / p.polePitch);
      const iron = 2 * wall * channelHeight + wall * (channelWidth - 2 * wall);
      return MAGNET * magnets + STEEL_DENSITY * iron;
    }
    case 'flat': {
      const { magnet, backIron } = size;
      return (
        MAGNET * magnet.height * magnet.width * (magnet.length / p.polePitch) +
        STEEL_DENSITY * backIron * magnet.width
      );
    }
    case 'screw':
      return STEEL_DENSITY * Math.PI * size.radius ** 2;
  }
}
