import { Group, Matrix4, type Mesh } from 'three';
import type { TubularSize } from '../../../shared/axis/motorSize.ts';
import { at } from '../../../shared/core/at.ts';
import type { Layout } from '../build/layout.ts';
import { letterPlate } from '../build/letterPlate.ts';
import type { Shop } from '../build/shop.ts';
import { barGeometry, block, many, type Point, ringGeometry, solid, spread, wind } from '../build/solids.ts';
import { bolts } from '../parts/bolts.ts';
import { type Coils, coils } from '../parts/coils.ts';
import { phaseMarks } from '../parts/phaseMarks.ts';
import { type Drive, firstCoil, poles } from './drive.ts';

/** A magnet shaft between end blocks, and around it a cylindrical coil unit whose coils stand free between thin fins. */
export function tubular(shop: Shop, plan: Layout, motor: TubularSize, polePitch: number): Drive {
  const { bin } = shop;
  const fixed = new Group();
  const moving = new Group();
  plan.tracks.forEach((z, track) => {
    fixed.add(shaft(shop, plan, motor, polePitch, track, z));
  });

  const { coilInner, coilOuter, finOuter, coilPitch, length } = motor;
  const ring = (inner: number, outer: number, long: number, bevel = 0) =>
    [false, true].map((cut) => ringGeometry(bin, inner, outer, long, cut, bevel));
  const coilRings = ring(coilInner, coilOuter, 0.8 * coilPitch).map((g) => wind(g, 'x', 0.8 * coilPitch));
  const finRings = ring(coilInner - 2e-4, finOuter, 0.17 * coilPitch);
  const flangeRings = ring(coilInner - 2e-4, 1.03 * finOuter, 0.4 * coilPitch, 0.04 * coilPitch);

  const swaps: { mesh: Mesh; whole: Mesh['geometry']; cut: Mesh['geometry'] }[] = [];
  const carriers: Mesh[] = [];
  const sets: Coils[] = [];
  const marks: Group[] = [];
  for (const unit of plan.units) {
    const z = at(plan.tracks, unit.track);
    const placeAt = (x: number): Point => [unit.x + x, plan.driveHeight, z];
    const coilXs = spread(-length / 2 + coilPitch / 2, length / 2 - coilPitch / 2, motor.coils);
    const set = coils(shop, at(coilRings, 0), coilXs.map(placeAt), Math.PI / 3);
    const letter = letterPlate(1.004 * coilOuter, 0.8 * coilPitch, PHASE_RISE, PHASE_TALL);
    const letters = phaseMarks(
      shop,
      letter,
      coilXs.map((x) => new Matrix4().makeTranslation(...placeAt(x))),
    );
    letters.visible = false;
    marks.push(letters);
    const finXs = spread(-length / 2 + coilPitch, length / 2 - coilPitch, motor.coils - 1);
    const fins = many(bin, at(finRings, 0), shop.m.anodisedFine, finXs.map(placeAt));
    const flanges = many(
      bin,
      at(flangeRings, 0),
      shop.m.anodised,
      [-1, 1].map((s) => placeAt(s * (length / 2 + 0.12 * coilPitch))),
    );
    const side = Math.sign(z);
    const saddle = block(
      bin,
      [length + 0.5 * coilPitch, 1.15 * finOuter, 0.42 * finOuter],
      [unit.x, plan.driveHeight, side * (plan.plate.width / 2 + 0.2 * finOuter)],
      shop.m.anodised,
      0.05 * finOuter,
    );
    swaps.push(
      { mesh: set.mesh, whole: at(coilRings, 0), cut: at(coilRings, 1) },
      { mesh: fins, whole: at(finRings, 0), cut: at(finRings, 1) },
      { mesh: flanges, whole: at(flangeRings, 0), cut: at(flangeRings, 1) },
    );
    carriers.push(fins, flanges, saddle);
    sets.push(set);
    moving.add(set.mesh, letters, fins, flanges, saddle);
  }
  return {
    fixed,
    moving,
    onTable: new Group(),
    coils: sets,
    carriers,
    screws: [],
    tableCut: null,
    setCut(open) {
      for (const { mesh, whole, cut } of swaps) mesh.geometry = open ? cut : whole;
      for (const letters of marks) letters.visible = open;
    },
    turn() {},
  };
}

/** How large the letter of a pole is, as a share of the shaft's radius, and how far above level, rad. */
const POLE_LETTER = 1.1;
const POLE_RISE = 0.55;

/** The letters of the phases stand below level, where a cut coil is still whole, and are taller than a coil is long. */
const PHASE_RISE = -0.32;
const PHASE_TALL = 1.5;

/** Poles show as bands of their radial field; the coil at electrical angle zero stands between two of them. */
function shaft(
  shop: Shop,
  plan: Layout,
  motor: TubularSize,
  polePitch: number,
  track: number,
  z: number,
): Group {
  const { bin, m } = shop;
  const group = new Group();
  const { from, to, driveHeight: y, endBlock } = plan;
  const bands = poles(firstCoil(plan, track) + polePitch / 2, polePitch, from, to, polePitch);
  const band = barGeometry(bin, motor.shaftRadius, 0.95 * polePitch);
  const plate = bin.own(letterPlate(1.004 * motor.shaftRadius, POLE_LETTER * motor.shaftRadius, POLE_RISE));
  for (const north of [true, false]) {
    const places = bands.filter((b) => b.north === north).map((b): Point => [b.x, y, z]);
    group.add(
      many(bin, band, north ? m.nickelNorth : m.nickelSouth, places),
      many(bin, plate, north ? m.lettered.north : m.lettered.south, places),
    );
  }
  const rod = barGeometry(bin, 0.955 * motor.shaftRadius, to - from + 2 * endBlock);
  group.add(solid(rod, m.polished, [(from + to) / 2, y, z]));
  const r = motor.shaftRadius;
  for (const x of [from - endBlock / 2, to + endBlock / 2]) {
    const height = y + 1.75 * r;
    group.add(block(bin, [endBlock, height, 3.6 * r], [x, height / 2, z], m.anodisedFine, 0.06 * endBlock));
    group.add(block(bin, [1.002 * endBlock, 0.0015, 3.61 * r], [x, y, z], m.hole, 1e-4));
    const collar = barGeometry(bin, 1.35 * r, 1.25 * endBlock);
    group.add(solid(collar, m.steel, [x, y, z]));
    group.add(
      bolts(
        shop,
        Math.min(0.22 * endBlock, 0.3 * r),
        [-1, 1].map((s): Point => [x, height, z + s * 1.42 * r]),
      ),
    );
  }
  return group;
}
