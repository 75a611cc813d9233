import {
  type Color,
  type ColorRepresentation,
  DoubleSide,
  LineBasicMaterial,
  MeshLambertMaterial,
  type MeshLambertMaterialParameters,
  MeshStandardMaterial,
  type MeshStandardMaterialParameters,
} from 'three';
import type { Bin } from './bin.ts';
import { granite, ground, hatching, plateLetter, wires } from './textures.ts';

export type Materials = ReturnType<typeof createMaterials>;

/** What the machine is made of. One set serves every machine the stage shows. */
export function createMaterials(bin: Bin) {
  const make = (settings: MeshStandardMaterialParameters) => bin.own(new MeshStandardMaterial(settings));
  const grinding = bin.own(ground());
  const winding = bin.own(wires(6));
  // Most of the picture is matt: without reflections it costs half as much to draw.
  const matt = (color: ColorRepresentation, more: MeshLambertMaterialParameters = {}) =>
    bin.own(new MeshLambertMaterial({ color, ...more }));
  const metal = (color: ColorRepresentation, roughness: number, more: MeshStandardMaterialParameters = {}) =>
    make({ color, roughness, metalness: 1, ...more });
  const letter = (text: string) => matt('#f4f4f2', { map: bin.own(plateLetter(text)) });
  return {
    granite: matt('#ffffff', { map: bin.own(granite()) }),
    steel: metal('#bcc0c4', 0.4, { roughnessMap: grinding }),
    polished: metal('#c3c6c9', 0.22),
    darkSteel: metal('#5b5f64', 0.45),
    nickelNorth: metal('#cfb9ae', 0.26),
    nickelSouth: metal('#b1bac8', 0.26),
    lettered: {
      north: metal('#d6bdb0', 0.32, { map: bin.own(plateLetter('N')) }),
      south: metal('#b4bfd0', 0.32, { map: bin.own(plateLetter('S')) }),
    },
    phases: {
      U: letter('U'),
      V: letter('V'),
      W: letter('W'),
    },
    copper: metal('#d58a5c', 0.36, { bumpMap: winding, bumpScale: 2 }),
    anodised: make({ color: '#3a3d41', roughness: 0.44, metalness: 0.5 }),
    anodisedFine: make({ color: '#4d5257', roughness: 0.42, metalness: 0.65 }),
    laminated: metal('#8b9095', 0.5, { bumpMap: winding, bumpScale: 1 }),
    potting: matt('#17191c'),
    rubber: matt('#1a1b1c'),
    chain: matt('#222427'),
    paint: matt('#59636b'),
    tape: metal('#d9bd7a', 0.3),
    chip: matt('#27313d'),
    bellows: matt('#40464d', { side: DoubleSide }),
    bronze: metal('#b98d4b', 0.38),
    mould: matt('#98a2a4'),
    lens: make({ color: '#86bccb', roughness: 0.08, metalness: 0, transparent: true, opacity: 0.75 }),
    rim: matt('#ffffff', { side: DoubleSide }),
    hole: matt('#0b0c0d'),
    cut: matt('#ffffff', { map: bin.own(hatching('#d8cfae', '#b7ac84')) }),
    phantom: bin.own(new LineBasicMaterial({ color: '#000000', transparent: true, opacity: 0.5 })),
  };
}

/**
 * A matt material that keeps the colour it is given recognisable against its legend: a good part of it shines by itself,
 * the rest takes the light and so keeps the shape.
 */
export function dataMaterial(bin: Bin): MeshStandardMaterial {
  const material = bin.own(new MeshStandardMaterial({ roughness: 0.75, metalness: 0, envMapIntensity: 0.5 }));
  material.onBeforeCompile = (shader) => {
    shader.fragmentShader = shader.fragmentShader.replace(
      '#include <emissivemap_fragment>',
      'totalEmissiveRadiance += 0.62 * diffuseColor.rgb; diffuseColor.rgb *= 0.42;',
    );
  };
  return material;
}

/** A colour given as the screen shows it. */
export function screenColour(into: Color, [r, g, b]: readonly [number, number, number]): Color {
  return into.setRGB(r, g, b, 'srgb');
}
