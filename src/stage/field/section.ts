import type { MotorFlux } from '../../../shared/axis/flux/motorFlux.ts';
import type { MotorSize } from '../../../shared/axis/motorSize.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';

interface Band {
  readonly low: number;
  readonly high: number;
}

/** One side of a coil in the section: `sense` is 1 where a positive current comes out of the picture. */
interface CoilSide extends Band {
  readonly coil: number;
  readonly x: number;
  readonly width: number;
  readonly sense: 1 | -1;
}

/**
 * A motor cut open along the axis, seen from the middle of its coil unit: x along the axis, y across, m. Where a shaft is cut, y is
 * negative below its middle.
 */
export interface Section extends Band {
  readonly iron: readonly Band[];
  /** Blocks that show a pole to the winding, with the side they show it on; a shaft has its poles at the ends of its magnets instead. */
  readonly rows: readonly Band[];
  readonly shaft: Band | null;
  readonly field: Band;
  readonly coils: number;
  readonly coilPitch: number;
  readonly sides: readonly CoilSide[];
}

/** Null where no field is computed. */
export function sectionOf(size: MotorSize, flux: MotorFlux, p: Parameters): Section | null {
  if (size.driveType === 'screw') return null;
  const { coils, coilPitch } = size;
  const places = Array.from({ length: coils }, (_, c) => (c - (coils - 1) / 2) * coilPitch);
  const { from, to } = flux.winding;
  if (size.driveType === 'tubular') {
    const e = p.coilOffset;
    const edge = to + 0.2 * size.shaftRadius;
    const ring = (sense: 1 | -1) => (x: number, coil: number) => ({
      coil,
      x,
      width: 0.8 * coilPitch,
      low: e + (sense > 0 ? from : -to),
      high: e + (sense > 0 ? to : -from),
      sense,
    });
    return {
      low: -edge,
      high: edge,
      iron: [],
      rows: [],
      shaft: { low: -size.shaftRadius, high: size.shaftRadius },
      field: { low: -edge, high: edge },
      coils,
      coilPitch,
      sides: [...places.map(ring(1)), ...places.map(ring(-1))],
    };
  }
  const racetrack = (low: number, high: number) =>
    places.flatMap((x, coil) =>
      ([1, -1] as const).map((sense) => ({
        coil,
        x: x - sense * 0.34 * coilPitch,
        width: 0.26 * coilPitch,
        low,
        high,
        sense,
      })),
    );
  const common = { shaft: null, coils, coilPitch };
  if (size.driveType === 'flat') {
    const { height } = size.magnet;
    const back = 0.6 * size.backIron;
    const top = from + Math.min(0.4 * size.unitHeight, 1.6 * height);
    return {
      ...common,
      low: -back,
      high: top,
      iron: [
        { low: -back, high: 0 },
        { low: from, high: top },
      ],
      rows: [{ low: 0, high: height }],
      field: { low: 0, high: from },
      sides: racetrack(from + 0.12 * (top - from), top - 0.12 * (top - from)),
    };
  }
  const face = to + size.gap;
  const wall = face + size.magnet.width;
  const edge = wall + 0.35 * size.wall;
  return {
    ...common,
    low: -edge,
    high: edge,
    iron: [
      { low: -edge, high: -wall },
      { low: wall, high: edge },
    ],
    rows: [
      { low: -wall, high: -face },
      { low: face, high: wall },
    ],
    field: { low: -wall, high: wall },
    sides: racetrack(0.8 * from + p.coilOffset, 0.8 * to + p.coilOffset),
  };
}
