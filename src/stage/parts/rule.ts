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
import { unitSystem } from '../../../shared/core/unitSystem.ts';
import { stepAtLeast } from '../../plot/ticks.ts';
import { cssColour } from '../../ui/look/colours.ts';
import type { Layout } from '../build/layout.ts';
import type { Shop } from '../build/shop.ts';
import { solid } from '../build/solids.ts';
import { painted } from '../build/textures.ts';

/** Height of its letters as a share of the rule's, and of the highest rule as a share of the granite's. */
const TEXT = 0.56;
const HIGHEST = 0.85;
/** Its height changes in steps, so that resizing the stage does not repaint it at every pixel. */
const STEP = 1.1;
const INCH = 0.0254;

export interface Rule {
  readonly group: Group;
  /** Hands on the rule, to be moved along x: where the table is, where it should be. */
  readonly position: Mesh;
  readonly setpoint: Mesh;
  /**
   * Makes it as high as it must be for letters of this height, m, or as the granite is high enough for; where that leaves them below `least`,
   * it has lines only.
   */
  fit(letters: number, min: number): void;
}

/** A steel rule along the front of the granite, graduated in the units that are read, with a hand for the table and one for the setpoint. */
export function rule({ bin, m }: Shop, { base, travelMin, travelMax, rail }: Layout): Rule {
  const group = new Group();
  const from = Math.max(travelMin - 2 * rail.width, base.xMin);
  const to = Math.min(travelMax + 2 * rail.width, base.xMax);
  const length = to - from;
  const usual = Math.min(0.034 * (base.xMax - base.xMin), 0.36 * base.height);
  const z = base.zMax;
  const face = bin.own(painted(4096, 128, { colour: true, repeat: false }, () => {}));
  const skin = bin.own(
    new MeshStandardMaterial({ map: face, color: '#d9dbdd', roughness: 0.45, metalness: 0.55 }),
  );
  const strip = solid(
    bin.own(new BoxGeometry(length, usual, 0.0015)),
    [m.steel, m.steel, m.steel, m.steel, skin, m.steel],
    [(from + to) / 2, 0, z + 0.0008],
  );
  strip.castShadow = false;
  group.add(strip);
  const hand = (up: boolean) => {
    const size = 0.42 * usual;
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
    mesh.position.z = z + 0.0024;
    group.add(mesh);
    return mesh;
  };
  const position = hand(false);
  const setpoint = hand(true);

  let drawn = '';
  function draw(height: number, numbered: boolean): void {
    if (drawn === `${height} ${numbered}`) return;
    drawn = `${height} ${numbered}`;
    const grown = height / usual;
    const middle = -Math.min(0.6 * usual, 0.5 * (base.height - height)) - 0.5 * height;
    strip.scale.y = grown;
    strip.position.y = middle;
    for (const [mesh, side] of [
      [position, 1],
      [setpoint, -1],
    ] as const) {
      mesh.scale.set(grown, grown, 1);
      mesh.position.y = middle + side * 0.62 * height;
    }
    const { width, height: h } = face.image;
    const pen = face.image.getContext('2d') as CanvasRenderingContext2D;
    pen.fillStyle = '#f4f4f2';
    pen.fillRect(0, 0, width, h);
    pen.fillStyle = '#17191b';
    graduate(pen, width, h, { from, to, height, numbered });
    face.needsUpdate = true;
  }
  draw(usual, true);

  return {
    group,
    position,
    setpoint,
    fit(letters, min) {
      const steps = Math.ceil(Math.log(letters / TEXT / usual) / Math.log(STEP));
      const height = Math.min(usual * STEP ** Math.max(steps, 0), HIGHEST * base.height);
      const numbered = TEXT * height >= min;
      draw(numbered ? height : usual, numbered);
    },
  };
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

interface Graduation {
  /** Ends and height of the face, m. */
  readonly from: number;
  readonly to: number;
  readonly height: number;
  readonly numbered: boolean;
}

function graduate(
  pen: CanvasRenderingContext2D,
  width: number,
  h: number,
  { from, to, height, numbered }: Graduation,
): void {
  const scale = width / (to - from);
  // The strip's pixels are not square: letters keep their shape.
  const squeeze = (scale * height) / h;
  const isInch = unitSystem() === 'inch';
  const unit = isInch ? INCH : 0.001;
  const step = (min: number) => unit * stepAtLeast(min / unit);
  const fine = step(Math.max(0.001, (6 / width) * (to - from)));
  const named = step(Math.max((to - from) / 14, 2 * height));
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.font = `600 ${TEXT * h}px system-ui, sans-serif`;
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
    if (!numbered || !isMultiple(x, named)) continue;
    const number = String(Number((x / unit).toFixed(3))).replace('-', '−');
    const text = isInch && i === 0 ? `${number} in` : number;
    const reach = (pen.measureText(text).width * squeeze) / 2;
    if (at < reach || at > width - reach) continue;
    pen.save();
    pen.translate(at, 0.66 * h);
    pen.scale(squeeze, 1);
    pen.fillText(text, 0, 0);
    pen.restore();
  }
}

function isMultiple(x: number, step: number): boolean {
  return Math.abs(x / step - Math.round(x / step)) < 1e-6;
}
