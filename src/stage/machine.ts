import { Box3, Group, type Material, type Mesh, Vector3 } from 'three';
import { motorConstants } from '../../shared/axis/motor.ts';
import { at, valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { ParameterName, Parameters } from '../../shared/core/parameters/table.ts';
import type { DriveType } from '../../shared/core/scene.ts';
import { Bin } from './build/bin.ts';
import { type Layout, layout } from './build/layout.ts';
import type { Materials } from './build/materials.ts';
import { apart, mergeStill } from './build/merge.ts';
import type { Shop } from './build/shop.ts';
import type { Drive } from './drives/drive.ts';
import { flat } from './drives/flat.ts';
import { screw } from './drives/screw.ts';
import { tubular } from './drives/tubular.ts';
import { uChannel } from './drives/uChannel.ts';
import { feet, footHeight, graniteBase } from './parts/base.ts';
import { type CableChain, cableChain } from './parts/cableChain.ts';
import { type Cover, cover } from './parts/cover.ts';
import { endStops } from './parts/endStops.ts';
import { rails } from './parts/guides.ts';
import { type Rule, rule } from './parts/rule.ts';
import { encoderScale, readHead } from './parts/scale.ts';
import { stand } from './parts/stand.ts';
import { type Table, table } from './parts/table.ts';
import { type Tower, tower } from './parts/tower.ts';

/** A machine is built anew when one of these changes; every other parameter leaves its shape alone. */
const SHAPE = [
  'travelMin',
  'travelMax',
  'payload',
  'tableMass',
  'coilMass',
  'motorCount',
  'polePitch',
  'lead',
  'polePairs',
  'continuousForce',
  'screwRigidity',
  'screwSupport',
  'magnetHeight',
  'airGap',
  'nominalGap',
  'misalignment2',
  'misalignment3',
  'misalignment4',
  'inclination',
  'base',
  'baseMass',
  'encoderSide',
  'cover',
] as const satisfies readonly ParameterName[];

/** A text that differs whenever the machine would look different at rest. */
export function shapeOf(driveType: DriveType, p: Parameters): string {
  return [driveType, ...SHAPE.map((name) => p[name])].join(' ');
}

/** One machine on the stage: it takes poses and temperatures, and gives back everything it holds. */
export class Machine {
  readonly root = new Group();
  /** The part whose x is the axis and which stands still. */
  readonly frame = new Group();
  readonly plan: Layout;
  readonly drive: Drive;
  readonly table: Table;
  readonly tower: Tower;
  readonly rule: Rule;
  /** Goes with the table. */
  readonly carried = new Group();
  /** The outermost points, in the coordinates of the world. */
  readonly extent: readonly Vector3[];
  readonly floor: number;
  /** Blocks a hand can take hold of, seen from the middle of the table. */
  readonly handles: readonly Box3[];
  readonly #bin = new Bin();
  readonly #swaying = new Group();
  readonly #motorSide = new Group();
  readonly #chain: CableChain | null;
  readonly #cover: Cover | null;
  readonly #ownMaterial = new Map<Mesh, Material | Material[]>();

  constructor(
    readonly driveType: DriveType,
    p: Parameters,
    materials: Materials,
  ) {
    const shop: Shop = { bin: this.#bin, m: materials };
    const plan = layout(driveType, p);
    this.plan = plan;
    this.drive = driveOf(shop, plan, p);
    this.table = table(shop, plan, this.drive.tableCut);
    this.#chain = cableChain(shop, plan);
    this.#cover = p.cover ? cover(shop, plan) : null;
    this.tower = tower(shop, plan, p.inclination);
    this.rule = rule(shop, plan);

    this.#swaying.add(
      graniteBase(shop, plan),
      rails(shop, plan),
      endStops(shop, plan),
      this.rule.group,
      this.tower.group,
      this.drive.fixed,
    );
    this.carried.add(this.table.group, this.drive.onTable);
    this.#motorSide.add(this.drive.moving);
    if (p.encoderSide === 'load') {
      this.#swaying.add(encoderScale(shop, plan));
      this.carried.add(readHead(shop, plan));
    }
    if (this.#chain) {
      this.#swaying.add(this.#chain.fixed);
      this.carried.add(this.#chain.moving);
    }
    if (this.#cover) this.#swaying.add(this.#cover.group);
    this.#swaying.add(this.carried, this.#motorSide);
    this.frame.add(this.#swaying);
    this.frame.rotation.z = p.inclination;
    const standing = stand(shop, plan, p.inclination);
    this.frame.add(feet(shop, plan, p.base));
    this.root.add(this.frame, standing.group);
    const own = [...this.drive.carriers, ...this.table.warm, ...this.drive.screws];
    for (const part of [this.frame, this.#swaying, this.carried, this.#motorSide, ...own]) apart(part);
    for (const hand of [this.rule.position, this.rule.setpoint]) apart(hand);
    mergeStill(this.root, this.#bin);
    this.floor = standing.floor;
    this.root.updateMatrixWorld(true);
    this.extent = this.#extentOf(plan);
    this.handles = handlesOf(plan);
  }

  pose(now: Float64Array): void {
    const table = valueAt(now, C.tablePosition);
    const motor = valueAt(now, C.motorPosition);
    this.carried.position.x = table;
    this.#motorSide.position.x = motor;
    this.#swaying.position.x = valueAt(now, C.basePosition);
    this.rule.position.position.x = table;
    this.rule.setpoint.position.x = valueAt(now, C.setpoint);
    this.drive.turn(motor);
    this.#chain?.pose(table);
    this.#cover?.pose(motor);
  }

  setCut(cut: boolean): void {
    this.table.setCut(cut);
    this.drive.setCut(cut);
    // A cut-away shows what lies below it.
    if (this.#cover) this.#cover.group.visible = !cut;
  }

  /** Dresses these parts in one material; null gives each its own back. */
  dress(meshes: readonly Mesh[], material: Material | null): void {
    for (const mesh of meshes) {
      if (!this.#ownMaterial.has(mesh)) this.#ownMaterial.set(mesh, mesh.material);
      mesh.material = material ?? (this.#ownMaterial.get(mesh) as Material);
    }
  }

  dispose(): void {
    this.root.removeFromParent();
    this.#bin.dispose();
  }

  #extentOf({ base, plateBottom, plate, payload, motor }: Layout): Vector3[] {
    const top = plateBottom + plate.height + (payload ? payload.height + 0.01 : 0);
    const overhang = motor.driveType === 'screw' ? motor.motorLength : 0;
    const bottom = -base.height - footHeight(this.plan);
    const corners = [base.xMin - overhang, base.xMax].flatMap((x) =>
      [bottom, top].flatMap((y) => [base.zMin, base.zMax].map((z) => new Vector3(x, y, z))),
    );
    for (const corner of corners) corner.applyMatrix4(this.frame.matrixWorld);
    return [...corners, this.tower.group.localToWorld(this.tower.top.clone())];
  }
}

function driveOf(shop: Shop, plan: Layout, p: Parameters): Drive {
  const { motor } = plan;
  switch (motor.driveType) {
    case 'tubular':
      return tubular(shop, plan, motor, p.polePitch);
    case 'u-channel':
      return uChannel(shop, plan, motor, p.polePitch);
    case 'flat':
      return flat(shop, plan, motor, p.polePitch);
    case 'screw':
      return screw(shop, plan, motor, { ...p, lead: Math.max(p.lead, 5e-4) });
  }
}

function handlesOf(plan: Layout): Box3[] {
  const { plate, plateBottom, payload, units, tracks, motor, driveHeight } = plan;
  const around = (x: number, z: number, length: number, width: number, low: number, high: number) =>
    new Box3(
      new Vector3(x - length / 2, low, z - width / 2),
      new Vector3(x + length / 2, high, z + width / 2),
    );
  const top = plateBottom + plate.height;
  const handles = [around(0, 0, plate.length, plate.width, plan.rail.height, top)];
  if (payload) handles.push(around(0, 0, payload.length, payload.width, top, top + payload.height + 0.006));
  if (motor.driveType === 'tubular')
    for (const { x, track } of units) {
      const r = motor.finOuter;
      handles.push(around(x, at(tracks, track), motor.length, 2 * r, driveHeight - r, driveHeight + r));
    }
  if (motor.driveType === 'u-channel')
    for (const { x, track } of units) {
      const { length, width, height } = motor.header;
      handles.push(around(x, at(tracks, track), length, width, top - height, top));
    }
  return handles;
}

/** Electrical angle of the windings at this motor position, rad. */
export function electricalAngle(p: Parameters, motorPosition: number): number {
  return (Math.PI * motorPosition) / motorConstants(p).polePitch;
}
