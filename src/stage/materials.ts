import {
  type Color,
  type ColorRepresentation,
  DoubleSide,
  LineBasicMaterial,
  MeshStandardMaterial,
  type MeshStandardMaterialParameters,
} from 'three';
import type { Bin } from './bin.ts';
import { granite, ground, hatching, poleLetter, wires } from './textures.ts';

export type Materials = ReturnType<typeof createMaterials>;

/** What the machine is made of. One set serves every machine the stage shows. */
export function createMaterials(bin: Bin) {
  const make = (settings: MeshStandardMaterialParameters) => bin.own(new MeshStandardMaterial(settings));
  const grinding = bin.own(ground());
  const winding = bin.own(wires(6));
  const metal = (color: ColorRepresentation, roughness: number, more: MeshStandardMaterialParameters = {}) =>
    make({ color, roughness, metalness: 1, ...more });
  return {
    granite: make({ map: bin.own(granite()), roughness: 0.42, metalness: 0 }),
    steel: metal('#bcc0c4', 0.4, { roughnessMap: grinding }),
    polished: metal('#c3c6c9', 0.22),
    darkSteel: metal('#5b5f64', 0.45),
    nickelNorth: metal('#cfb9ae', 0.26),
    nickelSouth: metal('#b1bac8', 0.26),
    lettered: {
      north: metal('#d6bdb0', 0.32, { map: bin.own(poleLetter('N')) }),
      south: metal('#b4bfd0', 0.32, { map: bin.own(poleLetter('S')) }),
    },
    copper: metal('#d58a5c', 0.36, { bumpMap: winding, bumpScale: 2 }),
    anodised: make({ color: '#3a3d41', roughness: 0.44, metalness: 0.5 }),
    anodisedFine: make({ color: '#4d5257', roughness: 0.42, metalness: 0.65 }),
    laminated: metal('#8b9095', 0.5, { bumpMap: winding, bumpScale: 1 }),
    potting: make({ color: '#17191c', roughness: 0.7, metalness: 0 }),
    rubber: make({ color: '#1a1b1c', roughness: 0.92, metalness: 0 }),
    chain: make({ color: '#1b1d20', roughness: 0.62, metalness: 0 }),
    paint: make({ color: '#59636b', roughness: 0.55, metalness: 0.1 }),
    tape: metal('#d9bd7a', 0.3),
    bronze: metal('#b98d4b', 0.38),
    mould: make({ color: '#cfd8da', roughness: 0.3, metalness: 0 }),
    lens: make({ color: '#9fc4cc', roughness: 0.08, metalness: 0, transparent: true, opacity: 0.75 }),
    rim: make({ color: '#ffffff', roughness: 0.6, metalness: 0, side: DoubleSide }),
    hole: make({ color: '#0b0c0d', roughness: 0.9, metalness: 0 }),
    cut: make({ map: bin.own(hatching('#d8cfae', '#8d8256')), roughness: 0.8, metalness: 0 }),
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
