import { Group, Matrix4, type Mesh, PlaneGeometry } from 'three';
import type { FlatSize } from '../../../shared/axis/motorSize.ts';
import { at } from '../../../shared/core/at.ts';
import type { Layout } from '../build/layout.ts';
import { apart } from '../build/merge.ts';
import { racetrack } from '../build/racetrack.ts';
import type { Shop } from '../build/shop.ts';
import { block, drawnOut, many, type Point, spread, wind } from '../build/solids.ts';
import { bolts } from '../parts/bolts.ts';
import { type Coils, coils } from '../parts/coils.ts';
import { section } from '../parts/cut.ts';
import { phaseMarks } from '../parts/phaseMarks.ts';
import { type Drive, firstCoil, poles, swapping } from './drive.ts';
import { magnets } from './magnets.ts';

/** A track of magnets on a steel plate, and above the gap an iron-core coil unit under the table. */
export function flat(shop: Shop, plan: Layout, motor: FlatSize, polePitch: number): Drive {
  const fixed = new Group();
  const moving = new Group();
  plan.tracks.forEach((z, track) => {
    fixed.add(magnetTrack(shop, plan, motor, polePitch, track, z));
  });
  const closed: Group[] = [];
  const open: Group[] = [];
  const sets: Coils[] = [];
  const carriers: Mesh[] = [];
  for (const unit of plan.units) {
    const z = at(plan.tracks, unit.track);
    const built = coilUnit(shop, motor);
    built.group.position.set(unit.x, plan.plateBottom - motor.unitHeight, z);
    moving.add(built.group);
    closed.push(built.closed);
    open.push(built.open);
    sets.push(built.coils);
    carriers.push(...built.carriers);
  }
  return {
    fixed,
    moving,
    onTable: new Group(),
    coils: sets,
    carriers,
    screws: [],
    tableCut: Math.min(...plan.tracks) - REAR_SHARE * motor.unitWidth,
    setCut: swapping(closed, open),
    turn() {},
  };
}

/** Cut this share of the width behind the middle of the unit. */
const REAR_SHARE = 0.3;

function magnetTrack(
  shop: Shop,
  plan: Layout,
  motor: FlatSize,
  polePitch: number,
  track: number,
  z: number,
): Group {
  const { bin, m } = shop;
  const group = new Group();
  const { from, to, driveHeight: bottom } = plan;
  const { backIron, magnet, unitWidth } = motor;
  const length = to - from;
  const middle = (from + to) / 2;
  if (bottom > 1e-3)
    group.add(block(bin, [length, bottom, 0.94 * unitWidth], [middle, bottom / 2, z], m.anodisedFine, 1e-3));
  const iron = 1.12 * unitWidth;
  group.add(block(bin, [length, backIron, iron], [middle, bottom + backIron / 2, z], m.darkSteel, 1e-3));
  group.add(
    magnets(
      shop,
      magnet,
      'up',
      poles(firstCoil(plan, track), polePitch, from, to, magnet.length).map(({ x, north }) => ({
        at: [x, bottom + backIron + magnet.height / 2, z],
        north,
      })),
    ),
  );
  const head = 0.035 * unitWidth;
  const every = spread(from + 3 * head, to - 3 * head, Math.max(Math.round(length / (4 * polePitch)), 2));
  group.add(
    bolts(
      shop,
      head,
      every.flatMap((x) =>
        [-1, 1].map((s): Point => [x, bottom + backIron, z + s * (iron / 2 - 1.3 * head)]),
      ),
    ),
  );
  return group;
}

/** Drawn about its own middle, its lower face at y = 0. */
function coilUnit(shop: Shop, motor: FlatSize) {
  const { bin, m } = shop;
  const [group, closed, open] = [new Group(), apart(new Group()), apart(new Group())];
  const { length, unitHeight: h, unitWidth: w, coilPitch } = motor;
  const body = block(bin, [length, 0.8 * h, w], [0, 0.4 * h, 0], m.potting, 0.05 * h);
  const lid = block(bin, [1.04 * length, 0.2 * h, 1.02 * w], [0, 0.9 * h, 0], m.anodised, 0.03 * h);
  const core = block(bin, [1.001 * length, 0.18 * h, 0.72 * w], [0, 0.7 * h, 0], m.laminated, 0.01 * h);
  closed.add(body, core, lid);

  const limb = 0.24 * coilPitch;
  const geometry = drawnOut(bin, racetrack(0.94 * w, 0.95 * coilPitch, limb), 0.5 * h, 0, 10);
  // Drawn out along the axis; a tooth coil stands upright.
  geometry.rotateZ(Math.PI / 2);
  const xs = spread(-length / 2 + coilPitch / 2, length / 2 - coilPitch / 2, motor.coils);
  const set = coils(
    shop,
    wind(geometry, 'y', 0.5 * h),
    xs.map((x): Point => [x, 0.3 * h, 0]),
    (4 * Math.PI) / 3,
  );
  const tooth = block(
    bin,
    [coilPitch - 2.3 * limb, 0.62 * h, 0.94 * w - 2.3 * limb],
    [0, 0, 0],
    m.laminated,
    2e-4,
  );
  const teeth = many(
    bin,
    tooth.geometry,
    m.laminated,
    xs.map((x): Point => [x, 0.31 * h, 0]),
  );
  const letter = Math.min(0.46 * coilPitch, 0.46 * h);
  const marks = phaseMarks(
    shop,
    new PlaneGeometry(letter, letter),
    xs.map((x) => new Matrix4().makeTranslation(x, 0.3 * h, 0.47 * w + 3e-4)),
  );
  const rear = -REAR_SHARE * w;
  const rest = [
    section(shop, length, 0.24 * h, -0.47 * w, rear, 0.57 * h, m.laminated),
    section(shop, 1.04 * length, 0.19 * h, -0.51 * w, rear, 0.81 * h, m.anodised),
  ];
  open.add(set.mesh, marks, teeth, ...rest);
  group.add(closed, open);
  return { group, closed, open, coils: set, carriers: [body, lid, ...rest] };
}
