import { CircleGeometry, ExtrudeGeometry, Group, Matrix4, type Mesh, PlaneGeometry } from 'three';
import type { ChannelSize } from '../../../shared/axis/motorSize.ts';
import { at } from '../../../shared/core/at.ts';
import type { Layout } from '../build/layout.ts';
import { apart } from '../build/merge.ts';
import { racetrack } from '../build/racetrack.ts';
import type { Shop } from '../build/shop.ts';
import {
  block,
  many,
  mapInMetres,
  type Point,
  profileGeometry,
  solid,
  spread,
  wind,
} from '../build/solids.ts';
import { type Coils, coils } from '../parts/coils.ts';
import { phantom } from '../parts/cut.ts';
import { phaseMarks } from '../parts/phaseMarks.ts';
import { type Drive, firstCoil, poles, swapping } from './drive.ts';
import { type Magnet, magnets } from './magnets.ts';

/** A steel channel with two facing rows of magnets, and between them a flat blade of coils that hangs from the table. */
export function uChannel(shop: Shop, plan: Layout, motor: ChannelSize, polePitch: number): Drive {
  const fixed = new Group();
  const moving = new Group();
  const closed: Group[] = [];
  const open: Group[] = [];
  plan.tracks.forEach((z, track) => {
    const channel = magnetChannel(shop, plan, motor, polePitch, track);
    for (const part of [channel.always, channel.closed, channel.open]) {
      part.position.set((plan.from + plan.to) / 2, plan.driveHeight, z);
      fixed.add(part);
    }
    closed.push(channel.closed);
    open.push(channel.open);
  });
  const carriers: Mesh[] = [];
  const sets: Coils[] = [];
  for (const unit of plan.units) {
    const z = at(plan.tracks, unit.track);
    const blade = coilBlade(shop, plan, motor, z);
    blade.group.position.set(unit.x, plan.driveHeight, z);
    moving.add(blade.group);
    carriers.push(...blade.carriers);
    sets.push(blade.coils);
    closed.push(blade.closed);
    open.push(blade.open);
  }
  return {
    fixed,
    moving,
    onTable: new Group(),
    coils: sets,
    carriers,
    screws: [],
    tableCut: null,
    setCut: swapping(closed, open),
    turn() {},
  };
}

/** Drawn about its own middle, standing on y = 0. */
function magnetChannel(shop: Shop, plan: Layout, motor: ChannelSize, polePitch: number, track: number) {
  const { bin, m } = shop;
  const [always, closed, open] = [new Group(), apart(new Group()), apart(new Group())];
  const { wall, channelWidth, channelHeight, magnet } = motor;
  const length = plan.to - plan.from;
  const middle = (plan.from + plan.to) / 2;
  const half = channelWidth / 2;
  const floor = channelHeight - magnet.height;
  const outline = (front: number) =>
    [
      [-half, 0],
      [half, 0],
      [half, front],
      [half - wall, front],
      [half - wall, floor],
      [-half + wall, floor],
      [-half + wall, channelHeight],
      [-half, channelHeight],
    ] as const;
  closed.add(solid(profileGeometry(bin, outline(channelHeight), length), m.steel));
  const hole = many(
    bin,
    bin.own(new CircleGeometry(0.055 * channelHeight, 20)),
    m.hole,
    spread(
      -length / 2 + 0.5 * channelHeight,
      length / 2 - 0.5 * channelHeight,
      Math.max(Math.round(length / (1.6 * channelHeight)), 2),
    ).map((x): Point => [x, 0.2 * channelHeight, half + 2e-4]),
  );
  hole.castShadow = false;
  always.add(hole);
  const stump = floor + 0.06 * magnet.height;
  open.add(solid(profileGeometry(bin, outline(stump), length), m.steel));
  const face = block(bin, [length, 4e-4, wall], [0, stump, half - wall / 2], m.cut, 1e-5);
  mapInMetres(face.geometry, 0.012);
  open.add(face, phantom(shop, length, channelHeight - stump, half - wall, half, stump));
  if (plan.driveHeight > 1e-3)
    always.add(
      block(
        bin,
        [length, plan.driveHeight, 0.9 * channelWidth],
        [0, -plan.driveHeight / 2, 0],
        m.anodisedFine,
      ),
    );
  const inset = half - wall - magnet.width / 2;
  const row = (side: 1 | -1): Magnet[] =>
    poles(firstCoil(plan, track), polePitch, plan.from, plan.to, magnet.length).map(({ x, north }) => ({
      at: [x - middle, floor + magnet.height / 2, side * inset],
      // A north pole of the front row faces a south pole of the rear row across the gap.
      north: side > 0 ? north : !north,
    }));
  always.add(magnets(shop, magnet, 'front', row(-1)));
  closed.add(magnets(shop, magnet, 'front', row(1)));
  return { always, closed, open };
}

/** Drawn about the middle of the unit, above the channel's floor at y = 0. */
function coilBlade(shop: Shop, plan: Layout, motor: ChannelSize, z: number) {
  const { bin, m } = shop;
  const [group, closed, open] = [new Group(), apart(new Group()), apart(new Group())];
  const { length, coilPitch, magnet, bladeWidth, channelHeight, header } = motor;
  const low = channelHeight - magnet.height + 0.0015;
  const headerBottom = plan.plateBottom + plan.plate.height - header.height - plan.driveHeight;
  const height = headerBottom - low;
  const middle = low + height / 2;

  closed.add(block(bin, [length, height, bladeWidth], [0, middle, 0], m.potting, 0.2 * bladeWidth));
  open.add(block(bin, [length, height, 0.25 * bladeWidth], [0, middle, -0.37 * bladeWidth], m.potting, 1e-4));
  const coilHeight = 0.96 * height;
  const depth = 0.66 * bladeWidth;
  const geometry = bin.own(
    new ExtrudeGeometry(racetrack(0.95 * coilPitch, coilHeight, 0.31 * coilPitch), {
      depth,
      steps: 1,
      curveSegments: 10,
      bevelEnabled: false,
    }).translate(0, 0, -depth / 2),
  );
  const places = spread(-length / 2 + coilPitch / 2, length / 2 - coilPitch / 2, motor.coils).map(
    (x): Point => [x, middle, 0.09 * bladeWidth],
  );
  const set = coils(shop, wind(geometry, 'z', depth), places, (4 * Math.PI) / 3);
  const letter = Math.min(0.34 * coilPitch, 0.8 * coilHeight);
  const marks = phaseMarks(
    shop,
    new PlaneGeometry(letter, letter),
    places.map(([x, y]) => new Matrix4().makeTranslation(x, y, 0.42 * bladeWidth + 2e-4)),
  );
  open.add(set.mesh, marks);

  const headerY = headerBottom + header.height / 2;
  const bar = block(bin, [1.02 * length, header.height, header.width], [0, headerY, 0], m.anodised);
  const reach = Math.abs(z) - plan.plate.width / 2;
  const bracket = block(
    bin,
    [0.8 * length, 0.8 * header.height, reach],
    [0, headerY, (-Math.sign(z) * reach) / 2],
    m.anodisedFine,
  );
  group.add(closed, open, bar, bracket);
  return { group, closed, open, coils: set, carriers: [bar, bracket] };
}
