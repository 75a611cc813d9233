import type { Group, Mesh, Object3D } from 'three';
import type { Layout } from '../build/layout.ts';
import type { Coils } from '../parts/coils.ts';

/** What a form adds to the machine all forms share. */
export interface Drive {
  /** Stands on the base. */
  readonly fixed: Group;
  /** Goes with the motor position. */
  readonly moving: Group;
  /** Goes with the table. */
  readonly onTable: Group;
  readonly coils: readonly Coils[];
  /** What has the temperature of coil carrier or housing, and of the screw. */
  readonly carriers: readonly Mesh[];
  readonly screws: readonly Mesh[];
  /** Table and payload open in front of this z, so that the drive shows; null: they need not. */
  readonly tableCut: number | null;
  setCut(cut: boolean): void;
  /** Turns what turns. */
  turn(motorPosition: number): void;
}

/** A cut-away that shows other parts in place of the closed ones; closed to begin with. */
export function swapping(closed: readonly Object3D[], open: readonly Object3D[]): Drive['setCut'] {
  const setCut = (cut: boolean) => {
    for (const part of closed) part.visible = !cut;
    for (const part of open) part.visible = cut;
  };
  setCut(false);
  return setCut;
}

/**
 * Where a magnet track's poles must lie so that the first coil of the track stands at electrical angle zero when the table
 * does: the position of that coil at x = 0.
 */
export function firstCoil({ units, motor }: Layout, track: number): number {
  const unit = units.find((u) => u.track === track) as Layout['units'][number];
  const pitch = motor.driveType === 'screw' ? 0 : motor.coilPitch;
  return unit.x - unit.misalignment - motor.length / 2 + pitch / 2;
}

interface Pole {
  readonly x: number;
  readonly north: boolean;
}

/** Poles whose magnets of `length` fit between the ends of the track; pole 0, a north, stands at `origin`. */
export function poles(origin: number, pitch: number, from: number, to: number, length: number): Pole[] {
  const first = Math.ceil((from + length / 2 - origin) / pitch);
  const last = Math.floor((to - length / 2 - origin) / pitch);
  return Array.from({ length: Math.max(last - first + 1, 0) }, (_, i) => ({
    x: origin + (first + i) * pitch,
    north: (first + i) % 2 === 0,
  }));
}
