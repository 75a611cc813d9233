import { CylinderGeometry, Group, type Mesh } from 'three';
import type { ScrewSize } from '../../../shared/axis/motorSize.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { Layout } from '../build/layout.ts';
import { apart } from '../build/merge.ts';
import type { Shop } from '../build/shop.ts';
import { barGeometry, block, ringGeometry, solid } from '../build/solids.ts';
import type { Coils } from '../parts/coils.ts';
import { rotaryMotor } from '../parts/rotaryMotor.ts';
import { threadGeometry } from '../parts/thread.ts';
import type { Drive } from './drive.ts';

/** Motor, coupling, a screw that turns between its bearings, and a nut under the table. */
export function screw(
  shop: Shop,
  plan: Layout,
  motor: ScrewSize,
  { lead, polePairs, screwSupport }: Pick<Parameters, 'lead' | 'polePairs' | 'screwSupport'>,
): Drive {
  const fixed = new Group();
  const onTable = new Group();
  const turning: Group[] = [];
  const screws: Mesh[] = [];
  const sets: Coils[] = [];
  const carriers: Mesh[] = [];
  const cuts: ((cut: boolean) => void)[] = [];
  for (const z of plan.tracks) {
    const drive = rotaryMotor(shop, motor, polePairs);
    drive.group.position.set(plan.base.xMin - 0.002, plan.driveHeight, z);
    const train = screwTrain(shop, plan, motor, { lead, screwSupport }, z);
    fixed.add(drive.group, train.fixed, train.turning);
    turning.push(drive.rotor, train.turning);
    screws.push(...train.screws);
    sets.push(drive.coils);
    carriers.push(...drive.carriers);
    const nut = nutUnderTable(shop, plan, motor, z);
    onTable.add(nut.group);
    cuts.push(drive.setCut, nut.setCut);
  }
  return {
    fixed,
    moving: new Group(),
    onTable,
    coils: sets,
    carriers,
    screws,
    tableCut: Math.min(...plan.tracks) - 0.7 * motor.nutRadius,
    setCut(cut) {
      for (const apply of cuts) apply(cut);
    },
    turn(motorPosition) {
      // A right-hand thread carries its nut against the sense it is turned in.
      const angle = (-2 * Math.PI * motorPosition) / lead;
      for (const part of turning) part.rotation.x = angle % (2 * Math.PI);
    },
  };
}

function screwTrain(
  shop: Shop,
  plan: Layout,
  motor: ScrewSize,
  { lead, screwSupport }: Pick<Parameters, 'lead' | 'screwSupport'>,
  z: number,
) {
  const { bin, m } = shop;
  const fixed = new Group();
  const turning = apart(new Group());
  const { from, to, driveHeight: y, endBlock, base } = plan;
  const r = motor.radius;
  turning.position.set(0, y, z);

  const length = to - from;
  const middle = (from + to) / 2;
  const thread = threadGeometry(bin, r, lead, length) ?? barGeometry(bin, r, length);
  const shaft = solid(thread, m.polished, [middle, 0, 0]);
  const journalFrom = base.xMin - 0.002;
  const journalTo = screwSupport === 'free' ? to : to + endBlock + 0.004;
  const journal = solid(barGeometry(bin, 0.66 * r, journalTo - journalFrom), m.steel, [
    (journalTo + journalFrom) / 2,
    0,
    0,
  ]);
  turning.add(shaft, journal);

  const room = from - endBlock - base.xMin;
  const couplingRadius = Math.min(Math.max(1.6 * r, 0.24 * motor.motorSide), 0.92 * y);
  turning.add(...coupling(shop, couplingRadius, 0.62 * room, base.xMin + 0.52 * room));

  const bearings = [from - endBlock / 2, ...(screwSupport === 'free' ? [] : [to + endBlock / 2])];
  for (const x of bearings) {
    const width = Math.max(3.4 * r, 2 * couplingRadius);
    const height = y + 1.7 * r;
    fixed.add(block(bin, [endBlock, height, width], [x, height / 2, z], m.anodisedFine, 0.05 * endBlock));
    fixed.add(solid(barGeometry(bin, 1.25 * r, 1.16 * endBlock), m.steel, [x, y, z]));
  }
  // A second fixed bearing is clamped by a nut on the shaft.
  if (screwSupport === 'fixed')
    turning.add(solid(barGeometry(bin, 1.15 * r, 0.3 * endBlock), m.steel, [to + 1.2 * endBlock, 0, 0]));
  // The motor plate: bolted to the end of the granite.
  const side = 1.1 * motor.motorSide;
  const low = -0.5 * base.height;
  fixed.add(
    block(
      bin,
      [0.008, y + side / 2 - low, side],
      [base.xMin + 0.002, (y + side / 2 + low) / 2, z],
      m.anodisedFine,
      0.002,
    ),
  );
  return { fixed, turning, screws: [shaft, journal] };
}

/** Two clamping hubs and a slit sleeve between them; the flats show that it turns. */
function coupling({ bin, m }: Shop, radius: number, length: number, x: number): Mesh[] {
  const hub = barGeometry(bin, radius, 0.34 * length);
  const parts = [-1, 1].map((s) => solid(hub, m.anodisedFine, [x + s * 0.33 * length, 0, 0]));
  parts.push(solid(barGeometry(bin, 0.9 * radius, 0.34 * length), m.bronze, [x, 0, 0]));
  const head = bin.own(new CylinderGeometry(0.24 * radius, 0.24 * radius, 0.3 * radius, 16));
  for (const s of [-1, 1])
    parts.push(solid(head, m.polished, [x + s * 0.33 * length, 0.9 * radius, 0.3 * radius]));
  return parts;
}

/** A flanged nut in a block that carries the table. */
function nutUnderTable({ bin, m }: Shop, plan: Layout, motor: ScrewSize, z: number) {
  const group = new Group();
  const { nutRadius: r, length, radius } = motor;
  const y = plan.driveHeight;
  const ring = (outer: number, long: number) =>
    ringGeometry(bin, 1.03 * radius, outer, long, false, 0.02 * long);
  group.add(
    solid(ring(r, length), m.steel, [0, y, z]),
    solid(ring(1.36 * r, 0.16 * length), m.polished, [length / 2, y, z]),
  );
  const saddle = plan.plateBottom - y;
  const [long, wide] = [0.66 * length, 2.7 * r];
  const whole = block(
    bin,
    [long, saddle, wide],
    [-0.08 * length, y + saddle / 2, z],
    m.anodisedFine,
    0.04 * r,
  );
  // Of the block only what stands behind the screw remains.
  const rear = block(
    bin,
    [long, saddle, 0.3 * wide],
    [-0.08 * length, y + saddle / 2, z - 0.35 * wide],
    m.anodisedFine,
  );
  group.add(apart(whole), apart(rear));
  const setCut = (cut: boolean) => {
    whole.visible = !cut;
    rear.visible = cut;
  };
  setCut(false);
  return { group, setCut };
}
