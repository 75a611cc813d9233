import {
  CatmullRomCurve3,
  CylinderGeometry,
  Group,
  Matrix4,
  type Mesh,
  Path,
  PlaneGeometry,
  Shape,
  TubeGeometry,
  Vector3,
} from 'three';
import type { ScrewSize } from '../../../shared/axis/motorSize.ts';
import { letterPlate } from '../build/letterPlate.ts';
import { apart } from '../build/merge.ts';
import { rounded } from '../build/racetrack.ts';
import type { Shop } from '../build/shop.ts';
import { barGeometry, block, drawnOut, type Point, ringGeometry, solid } from '../build/solids.ts';
import { type Coils, coils } from './coils.ts';
import { phaseMarks } from './phaseMarks.ts';

interface RotaryMotor {
  readonly group: Group;
  readonly rotor: Group;
  readonly coils: Coils;
  readonly carriers: readonly Mesh[];
  setCut(cut: boolean): void;
}

/** A motor whose flange face stands at x = 0 and whose body reaches to −x, its shaft on the axis. */
export function rotaryMotor(shop: Shop, motor: ScrewSize, polePairs: number): RotaryMotor {
  const { bin, m } = shop;
  const group = new Group();
  const { motorSide: side, motorLength: length } = motor;
  const bore = 0.41 * side;
  const flange = 0.1 * side;
  const cap = 0.3 * side;
  const body = length - flange - cap;
  const middle = -flange - body / 2;

  const square = rounded(new Shape(), side, side, 0.12 * side);
  const hole = new Path();
  hole.absarc(0, 0, bore, 0, 2 * Math.PI, true);
  square.holes.push(hole);
  const whole = drawnOut(bin, square, body, 0, 24);
  const cut = drawnOut(bin, threeQuarters(side / 2, bore), body, 0, 24);
  const housing = solid(whole, m.anodised, [middle, 0, 0]);
  group.add(housing);
  const plate = block(bin, [flange, 1.02 * side, 1.02 * side], [-flange / 2, 0, 0], m.steel, 0.02 * side);
  const rear = block(
    bin,
    [cap, 0.96 * side, 0.96 * side],
    [-length + cap / 2, 0, 0],
    m.darkSteel,
    0.05 * side,
  );
  const plug = block(
    bin,
    [0.5 * cap, 0.2 * side, 0.3 * side],
    [-length + 0.5 * cap, 0.56 * side, 0],
    m.rubber,
    0.03 * side,
  );
  group.add(plate, rear, plug, cable(shop, side, length, -length + 0.5 * cap));

  const open = apart(new Group());
  const iron = ringGeometry(bin, 0.37 * side, bore, 0.8 * body, true);
  open.add(solid(iron, m.laminated, [middle, 0, 0]));
  const face = bin.own(new PlaneGeometry(body, side / 2 - bore));
  const uv = face.getAttribute('uv');
  for (let i = 0; i < 4; i++)
    uv.setXY(i, (uv.getX(i) * body) / 0.012, (uv.getY(i) * (side / 2 - bore)) / 0.012);
  const faceMiddle = (side / 2 + bore) / 2;
  const upright = solid(face, m.cut, [middle, faceMiddle, 2e-4]);
  const lying = solid(face, m.cut, [middle, 2e-4, faceMiddle]);
  lying.rotation.x = -Math.PI / 2;
  open.add(upright, lying);

  const set = statorCoils(shop, motor, 0.9 * body, middle);
  open.add(set.mesh, statorLetters(shop, motor, middle));
  const rotor = rotorOf(shop, 0.2 * side, 0.85 * body, middle, polePairs);
  group.add(open, rotor);
  const setCut = (opened: boolean) => {
    open.visible = opened;
    housing.geometry = opened ? cut : whole;
  };
  setCut(false);
  return { group, rotor, coils: set, carriers: [housing, rear], setCut };
}

/** From the plug at `x` behind the motor and into the base. */
function cable({ bin, m }: Shop, side: number, length: number, x: number): Mesh {
  const points = [
    [x, 0.62, 0],
    [x, 0.84, -0.22],
    [-0.72 * length, 0.5, -0.78],
    [-0.35 * length, -0.15, -0.82],
    [0, -0.4, -0.5],
  ].map(([along = 0, up = 0, across = 0]) => new Vector3(along, up * side, across * side));
  const tube = new TubeGeometry(new CatmullRomCurve3(points), 40, 0.055 * side, 8);
  return solid(bin.own(tube), m.rubber);
}

/** A square ring without the quarter that faces the operator from above. */
function threeQuarters(half: number, bore: number): Shape {
  const shape = new Shape().moveTo(0, half).lineTo(half, half).lineTo(half, -half).lineTo(-half, -half);
  shape.lineTo(-half, 0).lineTo(-bore, 0);
  shape.absarc(0, 0, bore, Math.PI, 2.5 * Math.PI, false);
  shape.lineTo(0, half);
  return shape;
}

/** One coil a tooth, evenly around; three teeth to a pole pair stand 120 electrical degrees apart. */
function statorCoils(shop: Shop, motor: ScrewSize, length: number, x: number): Coils {
  const { motorSide: side, coils: count } = motor;
  const radius = 0.3 * side;
  const width = coilWidth(side, count);
  const shape = block(
    shop.bin,
    [length, 0.12 * side, width],
    [0, 0, 0],
    shop.m.copper,
    0.2 * Math.min(width, 0.12 * side),
  );
  const set = coils(
    shop,
    shape.geometry,
    Array.from({ length: count }, (): Point => [0, 0, 0]),
    (2 * Math.PI) / 3,
  );
  const [turn, out] = [new Matrix4(), new Matrix4().makeTranslation(x, radius, 0)];
  for (let i = 0; i < count; i++)
    set.mesh.setMatrixAt(i, turn.makeRotationX((2 * Math.PI * i) / count).multiply(out));
  return set;
}

/** On the outer face of each coil. */
function statorLetters(shop: Shop, { motorSide: side, coils: count }: ScrewSize, x: number): Group {
  const letter = 0.8 * coilWidth(side, count);
  const out = new Matrix4().makeTranslation(x, 0.362 * side, 0);
  return phaseMarks(
    shop,
    new PlaneGeometry(letter, letter).rotateX(-Math.PI / 2),
    Array.from({ length: count }, (_, i) =>
      new Matrix4().makeRotationX((2 * Math.PI * i) / count).multiply(out),
    ),
  );
}

/** Around the stator. */
function coilWidth(side: number, count: number): number {
  return Math.min(((2 * Math.PI * 0.3 * side) / count) * 0.82, 0.3 * side);
}

function rotorOf(shop: Shop, radius: number, length: number, x: number, polePairs: number): Group {
  const { bin, m } = shop;
  const rotor = apart(new Group());
  const arc = Math.PI / polePairs;
  // Pole 0, a north, faces up, where the first coil is.
  const start = (i: number) => Math.PI / 2 + (i - 0.5) * arc;
  for (let i = 0; i < 2 * polePairs; i++) {
    const shell = bin.own(
      new CylinderGeometry(radius, radius, length, 10, 1, true, start(i) + 0.03, arc - 0.06).rotateZ(
        Math.PI / 2,
      ),
    );
    const isNorth = i % 2 === 0;
    const letter = letterPlate(
      1.01 * radius,
      Math.min(0.7 * arc * radius, 0.5 * length),
      Math.PI / 2 + i * arc,
    );
    rotor.add(
      solid(shell, isNorth ? m.nickelNorth : m.nickelSouth, [x, 0, 0]),
      solid(bin.own(letter), isNorth ? m.lettered.north : m.lettered.south, [x, 0, 0]),
    );
  }
  rotor.add(solid(barGeometry(bin, 0.96 * radius, 0.99 * length), m.darkSteel, [x, 0, 0]));
  return rotor;
}
