import { Box3, InstancedMesh, Matrix4, Mesh, type Object3D, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { nominalDiameter } from '../../../shared/axis/screw.ts';
import { at, present } from '../../../shared/core/at.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { DriveType } from '../../../shared/core/scene.ts';
import { Bin } from '../../../src/stage/build/bin.ts';
import { layout } from '../../../src/stage/build/layout.ts';
import { flat } from '../../../src/stage/drives/flat.ts';
import { screw } from '../../../src/stage/drives/screw.ts';
import { tubular } from '../../../src/stage/drives/tubular.ts';
import { uChannel } from '../../../src/stage/drives/uChannel.ts';
import { kits, namedMaterials } from './kits.ts';

/** Sizes on the graphics card have seven digits: a micrometre is looked at, not less. */
function drawn(driveType: DriveType, p: Parameters) {
  const plan = layout(driveType, p);
  const shop = { bin: new Bin(), m: namedMaterials() };
  const { motor } = plan;
  const drive =
    motor.driveType === 'tubular'
      ? tubular(shop, plan, motor, p.polePitch)
      : motor.driveType === 'u-channel'
        ? uChannel(shop, plan, motor, p.polePitch)
        : motor.driveType === 'flat'
          ? flat(shop, plan, motor, p.polePitch)
          : screw(shop, plan, motor, p);
  const meshes: Mesh[] = [];
  for (const group of [drive.fixed, drive.moving, drive.onTable]) {
    group.updateMatrixWorld(true);
    group.traverse((object: Object3D) => {
      if (object instanceof Mesh) meshes.push(object);
    });
  }
  const of = (name: string) =>
    meshes.filter(({ material }) => at(Array.isArray(material) ? material : [material], 0).name === name);
  const box = (name: string) => of(name).reduce((all, mesh) => all.expandByObject(mesh), new Box3());
  return { plan, drive, of, box };
}

/** Where the copies of a mesh stand along the axis, m. */
function placesAlong(mesh: Mesh): number[] {
  if (!(mesh instanceof InstancedMesh)) throw new Error('not many of the same');
  const matrix = new Matrix4();
  return Array.from({ length: mesh.count }, (_, i) => {
    mesh.getMatrixAt(i, matrix);
    return new Vector3().setFromMatrixPosition(matrix).x;
  });
}

/** Distances of a mesh's own points from the axis, m. */
function radii({ geometry }: Mesh): number[] {
  const points = geometry.getAttribute('position');
  return Array.from({ length: points.count }, (_, i) => Math.hypot(points.getY(i), points.getZ(i)));
}

const first = (meshes: readonly Mesh[]) => present(meshes[0]);
const widened = (p: Parameters): Parameters => ({ ...p, airGap: p.airGap + 5e-4 });

describe('the tubular motor is drawn', () => {
  it.each(kits('tubular'))('with the pole pitch, the gap and the mass of its parameters: %s', (_, p) => {
    const { of, plan } = drawn('tubular', p);
    const [one = 0, next = 0] = placesAlong(first(of('nickelNorth')));
    expect(next - one).toBeCloseTo(2 * p.polePitch, 6);
    const shaft = Math.max(...radii(first(of('nickelNorth'))));
    const bore = (meshes: readonly Mesh[]) => Math.min(...radii(first(meshes)));
    const gap = bore(of('copper')) - shaft;
    expect(gap).toBeGreaterThan(0);
    expect(bore(drawn('tubular', widened(p)).of('copper')) - shaft - gap).toBeCloseTo(5e-4, 6);
    // Copper and resin, 5500 kg/m³; in whole poles.
    const outer = Math.max(...radii(first(of('copper'))));
    const perPole = 5500 * Math.PI * (outer ** 2 - (shaft + gap) ** 2) * p.polePitch;
    expect(Math.abs((plan.motor.length / p.polePitch) * perPole - p.coilMass)).toBeLessThan(0.51 * perPole);
  });
});

describe('the flat motor is drawn', () => {
  it.each(kits('flat'))('with the pole pitch, magnets, gap and mass of its parameters: %s', (_, p) => {
    const { of, box, plan } = drawn('flat', p);
    const [one = 0, next = 0] = placesAlong(first(of('nickelNorth')));
    expect(next - one).toBeCloseTo(2 * p.polePitch, 6);
    const magnets = box('nickelNorth');
    expect(magnets.max.y - magnets.min.y).toBeCloseTo(p.magnetHeight, 6);
    expect(box('potting').min.y - magnets.max.y).toBeCloseTo(p.airGap, 6);
    const { length, unitHeight, unitWidth } = plan.motor as Extract<typeof plan.motor, { driveType: 'flat' }>;
    const body = box('anodised');
    expect(Math.abs(body.max.z - body.min.z - 1.02 * unitWidth)).toBeLessThan(1e-6);
    // Copper, iron and resin, 6500 kg/m³; in whole groups of four poles.
    const perGroup = 6500 * unitHeight * unitWidth * 4 * p.polePitch;
    expect(Math.abs((length / (4 * p.polePitch)) * perGroup - p.coilMass)).toBeLessThan(0.51 * perGroup);
  });
});

describe('the U-channel motor is drawn', () => {
  it.each(kits('u-channel'))('with the pole pitch and the gap of its parameters: %s', (_, p) => {
    const { of, box } = drawn('u-channel', p);
    const [one = 0, next = 0] = placesAlong(first(of('nickelNorth')));
    expect(next - one).toBeCloseTo(2 * p.polePitch, 6);
    // The rear row of magnets ends where the gap begins; the blade is the same at any gap.
    const clearance = (parameters: Parameters) => {
      const { of, box } = drawn('u-channel', parameters);
      const rear = new Box3().expandByObject(first(of('nickelNorth')));
      return box('potting').min.z - rear.max.z;
    };
    expect(clearance(p)).toBeGreaterThan(0);
    expect(clearance(widened(p)) - clearance(p)).toBeCloseTo(5e-4, 6);
    expect(box('potting').min.y).toBeGreaterThan(0);
  });
});

describe('the screw is drawn', () => {
  it.each(kits('screw'))('with the diameter its stiffness implies, and turns once for a lead: %s', (_, p) => {
    const { drive } = drawn('screw', p);
    expect(2 * Math.max(...radii(present(drive.screws[0])))).toBeCloseTo(nominalDiameter(p), 6);
    drive.turn(p.lead / 4);
    const turned: number[] = [];
    drive.fixed.traverse(({ rotation }) => turned.push(rotation.x));
    expect(Math.min(...turned)).toBeCloseTo(-Math.PI / 2, 9);
  });
});

it.each(['tubular', 'flat', 'u-channel', 'screw'] as const)(
  'every coil bears the letter of its phase, in the order of the windings: %s',
  (driveType) => {
    const [, p] = present(kits(driveType)[0]);
    const { drive, of } = drawn(driveType, p);
    const counts = ['U', 'V', 'W'].map((letter) => (first(of(letter)) as InstancedMesh).count);
    expect(new Set(counts).size).toBe(1);
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(present(drive.coils[0]).mesh.count);
    if (driveType === 'screw') return;
    const coil = placesAlong(present(drive.coils[0]).mesh);
    for (const [k, letter] of ['U', 'V', 'W'].entries())
      expect(present(placesAlong(first(of(letter)))[1])).toBeCloseTo(present(coil[k + 3]), 6);
  },
);
