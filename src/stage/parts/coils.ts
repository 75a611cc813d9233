import { type BufferGeometry, Color, type InstancedMesh, type Material } from 'three';
import { heatColour, type Rgb, signedColour } from '../build/colourScales.ts';
import { coilCurrent } from '../build/electrics.ts';
import { screenColour } from '../build/materials.ts';
import type { Shop } from '../build/shop.ts';
import { many, type Point } from '../build/solids.ts';

/** A set of coils of one motor that can show what flows in them and how warm they are. */
export interface Coils {
  readonly mesh: InstancedMesh;
  /** Copper, or a colour for each: `material` must then take colours as data. */
  setPlain(): void;
  showCurrents(
    fieldCurrent: number,
    forceCurrent: number,
    angle: number,
    fullScale: number,
    material: Material,
  ): void;
  showHeat(share: number, material: Material): void;
}

/** `shift` is the electrical angle from one coil to the next. */
export function coils(
  { bin, m }: Shop,
  geometry: BufferGeometry,
  places: readonly Point[],
  shift: number,
): Coils {
  const mesh = many(bin, geometry, m.copper, places);
  const colour = new Color();
  const rgb: Rgb = [0, 0, 0];
  const white = new Color(1, 1, 1);
  const paint = (of: (i: number) => Color, material: Material) => {
    for (let i = 0; i < places.length; i++) mesh.setColorAt(i, of(i));
    (mesh.instanceColor as NonNullable<typeof mesh.instanceColor>).needsUpdate = true;
    mesh.material = material;
  };
  paint(() => white, m.copper);
  return {
    mesh,
    setPlain: () => paint(() => white, m.copper),
    showCurrents: (fieldCurrent, forceCurrent, angle, fullScale, material) =>
      paint((i) => {
        const share = coilCurrent(fieldCurrent, forceCurrent, angle + i * shift) / fullScale;
        return screenColour(colour, signedColour(share, rgb));
      }, material),
    showHeat: (share, material) => paint(() => screenColour(colour, heatColour(share, rgb)), material),
  };
}
