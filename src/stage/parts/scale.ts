import {
  BoxGeometry,
  Color,
  DoubleSide,
  Group,
  Mesh,
  MeshStandardMaterial,
  Shape,
  ShapeGeometry,
} from 'three';
import { stepAtLeast } from '../../charts/ticks.ts';
import { cssColour } from '../../look/colours.ts';
import type { Layout } from '../layout.ts';
import { block, solid } from '../solids.ts';
import { painted } from '../textures.ts';
import type { Shop } from './shop.ts';

/** Where the encoder's tape lies across the machine, and its height over the granite. */
function tapePlace({ motor, plate, rail, plateBottom }: Layout): { z: number; top: number } {
  const underTable = motor.form === 'tubular' || motor.form === 'u-channel';
  return underTable
    ? { z: 0, top: plateBottom - 0.5 * rail.width }
    : { z: plate.width / 2 + 0.75 * rail.width, top: 0.7 * rail.top };
}

/** The encoder's graduated tape on its bar. */
export function encoderScale({ bin, m }: Shop, plan: Layout): Group {
  const group = new Group();
  const { from, to, rail } = plan;
  const { z, top } = tapePlace(plan);
  const w = 0.9 * rail.width;
  const length = to - from;
  const middle = (from + to) / 2;
  group.add(block(bin, [length, top, w], [middle, top / 2, z], m.anodisedFine));
  const lines = bin.own(
    painted(1024, 32, { colour: true }, (pen, width, height) => {
      pen.fillStyle = '#ffffff';
      pen.fillRect(0, 0, width, height);
      pen.fillStyle = '#54421d';
      for (let i = 0; i < 64; i++) pen.fillRect(i * 16, 5, 7, height - 10);
    }),
  );
  // The grating itself is far too fine to draw: one line stands for a millimetre.
  lines.repeat.set(length / 0.064, 1);
  const skin = bin.own(
    new MeshStandardMaterial({ map: lines, color: m.tape.color, roughness: 0.3, metalness: 1 }),
  );
  const tape = solid(
    bin.own(new BoxGeometry(length, 6e-4, 0.62 * w)),
    [m.tape, m.tape, skin, m.tape, m.tape, m.tape],
    [middle, top + 3e-4, z],
  );
  tape.castShadow = false;
  group.add(tape);
  return group;
}

/** The head that reads it, hung from the table. */
export function readHead({ bin, m }: Shop, plan: Layout): Group {
  const group = new Group();
  const { rail, plateBottom, plate } = plan;
  const { z, top } = tapePlace(plan);
  const w = 1.1 * rail.width;
  const bottom = top + 0.0012;
  const height = Math.max(plateBottom - bottom, 0.25 * rail.width);
  group.add(block(bin, [2.4 * w, height, w], [0, bottom + height / 2, z], m.darkSteel, 0.06 * w));
  if (z > plate.width / 2)
    group.add(
      block(
        bin,
        [2 * w, 0.35 * plate.height, 0.5 * w + 0.004],
        [0, plateBottom + 0.18 * plate.height, z - 0.55 * w],
        m.anodisedFine,
        0.05 * w,
      ),
    );
  return group;
}

export interface Rule {
  readonly group: Group;
  /** Hands on the rule, to be moved along x: where the table is, where it should be. */
  readonly position: Mesh;
  readonly setpoint: Mesh;
}

/** A steel rule along the front of the granite, graduated in millimetres, with a hand for the table and one for the setpoint. */
export function rule({ bin, m }: Shop, { base, travelMin, travelMax, rail }: Layout): Rule {
  const group = new Group();
  const from = Math.max(travelMin - 2 * rail.width, base.xMin);
  const to = Math.min(travelMax + 2 * rail.width, base.xMax);
  const length = to - from;
  const height = Math.min(0.034 * (base.xMax - base.xMin), 0.36 * base.height);
  const face = bin.own(
    painted(4096, 128, { colour: true, repeat: false }, (pen, width, h) => {
      pen.fillStyle = '#f4f4f2';
      pen.fillRect(0, 0, width, h);
      pen.fillStyle = '#17191b';
      graduate(pen, width, h, from, to, height);
    }),
  );
  const skin = bin.own(
    new MeshStandardMaterial({ map: face, color: '#d9dbdd', roughness: 0.45, metalness: 0.55 }),
  );
  const z = base.zMax;
  const y = -1.1 * height;
  const strip = solid(
    bin.own(new BoxGeometry(length, height, 0.0015)),
    [m.steel, m.steel, m.steel, m.steel, skin, m.steel],
    [(from + to) / 2, y, z + 0.0008],
  );
  strip.castShadow = false;
  group.add(strip);
  const hand = (up: boolean) => {
    const size = 0.42 * height;
    const s = up ? 1 : -1;
    const triangle = (grown: number) =>
      bin.own(
        new ShapeGeometry(
          new Shape()
            .moveTo(0, s * 2.1 * grown)
            .lineTo(-0.62 * size - 1.7 * grown, -s * (size + grown))
            .lineTo(0.62 * size + 1.7 * grown, -s * (size + grown)),
        ),
      );
    const mesh = new Mesh(
      triangle(0),
      bin.own(new MeshStandardMaterial({ roughness: 0.6, side: DoubleSide })),
    );
    const rim = new Mesh(triangle(0.09 * size), m.rim);
    rim.position.z = -4e-4;
    mesh.add(rim);
    mesh.position.set(0, y + (up ? -0.62 : 0.62) * height, z + 0.0024);
    group.add(mesh);
    return mesh;
  };
  return { group, position: hand(false), setpoint: hand(true) };
}

/** Gives the hands the colours of their quantities, as the theme has them now. */
export function colourHands({ position, setpoint }: Rule): void {
  paintHand(position, new Color(cssColour('--q-position')));
  paintHand(setpoint, new Color(cssColour('--q-setpoint')));
}

function paintHand(hand: Mesh, colour: Color): void {
  const material = hand.material as MeshStandardMaterial;
  material.color.copy(colour);
  material.emissive.copy(colour).multiplyScalar(0.35);
}

function graduate(
  pen: CanvasRenderingContext2D,
  width: number,
  h: number,
  from: number,
  to: number,
  height: number,
): void {
  const scale = width / (to - from);
  const tall = h / height;
  const fine = stepAtLeast(Math.max(0.001, (6 / width) * (to - from)));
  const named = stepAtLeast(Math.max((to - from) / 14, 2.6 * height));
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  for (let i = Math.ceil(from / fine); i <= Math.floor(to / fine); i++) {
    const x = i * fine;
    const at = (x - from) * scale;
    const share = isMultiple(x, named)
      ? 0.34
      : isMultiple(x, named / 2)
        ? 0.27
        : isMultiple(x, 10 * fine)
          ? 0.22
          : 0.12;
    pen.fillRect(at - 1.2, 0, 2.4, share * h);
    if (!isMultiple(x, named)) continue;
    pen.save();
    pen.translate(at, 0.66 * h);
    // The strip's pixels are not square: letters keep their shape.
    pen.scale(scale / tall, 1);
    pen.font = `600 ${0.56 * h}px system-ui, sans-serif`;
    pen.fillText(String(Math.round(x * 1000)).replace('-', '−'), 0, 0);
    pen.restore();
  }
}

function isMultiple(x: number, step: number): boolean {
  return Math.abs(x / step - Math.round(x / step)) < 1e-6;
}
