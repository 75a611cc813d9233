import { type MotorSize, motorSize, motorTracks, type Size } from '../../../shared/axis/motorSize.ts';
import { at } from '../../../shared/core/at.ts';
import { loadSideMass, motorSideMass } from '../../../shared/core/movedMass.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { DriveType } from '../../../shared/core/scene.ts';
import { GRANITE, payloadSize, plateSize, railWidth } from './sizes.ts';

/**
 * Where everything stands, in machine coordinates: x along the axis from table position zero, y up from the top of the
 * granite, z towards the operator. SI.
 */
export interface Layout {
  readonly motor: MotorSize;
  /** The motors stand beside the table, not under it. */
  readonly beside: boolean;
  readonly travelMin: number;
  readonly travelMax: number;
  readonly plate: Size;
  readonly plateBottom: number;
  readonly payload: Size | null;
  readonly rail: RailLayout;
  /** Across: the middle of each magnet track or screw. */
  readonly tracks: readonly number[];
  /** Coil units or nuts: the track each runs on, and its middle seen from the middle of the table. */
  readonly units: readonly Unit[];
  /** Height of shaft or screw axis, of the channel's floor, of the magnet track's underside. */
  readonly driveHeight: number;
  /** Ends of what runs the length of the machine: rails, tracks, screw. */
  readonly from: number;
  readonly to: number;
  readonly endBlock: number;
  readonly chain: { readonly radius: number; readonly width: number; readonly z: number } | null;
  readonly base: {
    readonly xMin: number;
    readonly xMax: number;
    readonly zMin: number;
    readonly zMax: number;
    readonly height: number;
  };
}

interface Unit {
  readonly track: number;
  /** Stated misalignment included. */
  readonly x: number;
  readonly misalignment: number;
}

interface RailLayout {
  readonly width: number;
  readonly height: number;
  readonly z: number;
  readonly carriage: Size;
  /** Height of the carriage top. */
  readonly top: number;
  /** Middle of each carriage seen from the middle of the table. */
  readonly carriages: readonly number[];
}

/** Types whose motors stand beside the table, with the scale under it. */
const BESIDE: readonly DriveType[] = ['tubular', 'u-channel'];

export function layout(driveType: DriveType, p: Parameters): Layout {
  const motor = motorSize(driveType, p);
  const trackOf = motorTracks(driveType, p.motorCount);
  const trackCount = Math.max(...trackOf) + 1;
  const units = unitPlaces(motor, p, trackOf);
  const rowLength = 2 * Math.max(...units.map(({ x }) => Math.abs(x) + motor.length / 2));

  const rw = railWidth(loadSideMass(p) + (driveType === 'screw' ? 0 : motorSideMass(p)));
  const carriage = { length: 3.7 * rw, height: 1.25 * rw, width: 2.2 * rw };
  const acrossOne = acrossWidth(motor);
  const beside = BESIDE.includes(driveType);
  const minWidth = beside ? 8 * rw : trackCount * acrossOne + 2 * (carriage.width + 0.8 * rw);
  const minLength =
    driveType === 'screw' ? Math.max(1.3 * motor.length, 1.2 * carriage.length) : 0.92 * rowLength;
  const plate = plateSize(p.tableMass, minLength, minWidth);

  const railTop = 1.6 * rw;
  const { plateBottom, driveHeight } = heights(motor, railTop, plate.height, rw);
  const tracks = Array.from({ length: trackCount }, (_, i) =>
    beside
      ? (i === 0 ? 1 : -1) * (plate.width / 2 + 0.55 * acrossOne)
      : (i - (trackCount - 1) / 2) * acrossOne,
  );

  const endBlock = Math.max(1.2 * rw, 0.014);
  const half = Math.max(plate.length, rowLength) / 2 + 1.1 * rw;
  const from = p.travelMin - half;
  const to = p.travelMax + half;
  const besideWidth = beside ? 1.1 * acrossOne : 0;
  const rear = -plate.width / 2 - (trackCount > 1 ? besideWidth : 0);
  const front = plate.width / 2 + besideWidth;
  const chainRadius = Math.min(Math.max(0.42 * (plateBottom + 0.5 * plate.height), 0.013), 0.06);
  const chain =
    driveType === 'screw'
      ? null
      : { radius: chainRadius, width: 1.1 * chainRadius, z: rear - 0.9 * chainRadius };
  const footprint = {
    xMin: from - endBlock - (motor.driveType === 'screw' ? Math.max(0.7 * motor.motorSide, rw) : 0.8 * rw),
    xMax: to + endBlock + 0.8 * rw,
    zMin: (chain ? chain.z - chain.width : rear) - 0.8 * rw,
    zMax: front + (beside ? 0.8 : 2.4) * rw,
  };
  return {
    motor,
    beside,
    travelMin: p.travelMin,
    travelMax: p.travelMax,
    plate,
    plateBottom,
    payload: payloadSize(p.payload),
    rail: {
      width: rw,
      height: 0.9 * rw,
      z: plate.width / 2 - 0.58 * carriage.width,
      carriage,
      top: railTop,
      carriages: carriagePlaces(plate.length, carriage.length),
    },
    tracks,
    units,
    driveHeight,
    from,
    to,
    endBlock,
    chain,
    base: { ...footprint, height: baseHeight(footprint, p) },
  };
}

/**
 * Units in a row stand a whole number of pole pairs apart, so that one amplifier feeds both alike; the stated misalignment
 * comes on top, at its true size.
 */
function unitPlaces(motor: MotorSize, p: Parameters, trackOf: readonly number[]): Unit[] {
  const pair = 2 * p.polePitch;
  const apart = motor.driveType === 'screw' ? 0 : Math.ceil(motor.length / pair + 0.2) * pair;
  const stated =
    motor.driveType === 'screw' ? [0, 0, 0, 0] : [0, p.misalignment2, p.misalignment3, p.misalignment4];
  return trackOf.map((track, i) => {
    const row = trackOf.flatMap((t, j) => (t === track ? [j] : []));
    const misalignment = at(stated, i);
    return { track, misalignment, x: (row.indexOf(i) - (row.length - 1) / 2) * apart + misalignment };
  });
}

/** Room that one track takes across the machine. */
function acrossWidth(motor: MotorSize): number {
  switch (motor.driveType) {
    case 'tubular':
      return 2.15 * motor.finOuter;
    case 'u-channel':
      return 1.15 * motor.channelWidth;
    case 'flat':
      return 1.16 * motor.unitWidth;
    case 'screw':
      return Math.max(3 * motor.nutRadius, 1.08 * motor.motorSide);
  }
}

function heights(motor: MotorSize, railTop: number, plateHeight: number, rw: number) {
  switch (motor.driveType) {
    case 'tubular': {
      // The line of force runs through the middle of the plate.
      const plateBottom = Math.max(railTop, motor.finOuter + 0.5 * rw - plateHeight / 2);
      return { plateBottom, driveHeight: plateBottom + plateHeight / 2 };
    }
    case 'u-channel': {
      const headerTop = motor.channelHeight + 0.25 * rw + motor.header.height;
      const plateBottom = Math.max(railTop, headerTop - plateHeight);
      return { plateBottom, driveHeight: plateBottom + plateHeight - headerTop };
    }
    case 'flat': {
      const stack = motor.backIron + motor.magnet.height + motor.gap + motor.unitHeight;
      const plateBottom = Math.max(railTop, stack);
      return { plateBottom, driveHeight: plateBottom - stack };
    }
    case 'screw': {
      const plateBottom = Math.max(railTop, 2.5 * motor.nutRadius);
      return { plateBottom, driveHeight: plateBottom - 1.2 * motor.nutRadius };
    }
  }
}

function carriagePlaces(plateLength: number, carriageLength: number): readonly number[] {
  const reach = plateLength / 2 - 0.56 * carriageLength;
  return reach > 0.56 * carriageLength ? [-reach, reach] : [0];
}

/** A base on mounts has the height its mass asks for, as far as it stays in the picture; a fixed one a plain proportion. */
function baseHeight(
  { xMin, xMax, zMin, zMax }: { xMin: number; xMax: number; zMin: number; zMax: number },
  p: Parameters,
): number {
  const length = xMax - xMin;
  const asked = p.base ? p.baseMass / GRANITE / (length * (zMax - zMin)) : 0.11 * length;
  return Math.min(Math.max(asked, 0.09 * length, 0.03), Math.max(0.24 * length, 0.06));
}
