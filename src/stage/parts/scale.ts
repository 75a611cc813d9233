import { BoxGeometry, Group, MeshStandardMaterial } from 'three';
import type { Layout } from '../build/layout.ts';
import type { Shop } from '../build/shop.ts';
import { block, solid } from '../build/solids.ts';
import { painted } from '../build/textures.ts';

/** Where the encoder's tape lies across the machine, and its height over the granite. */
function tapePlace({ beside, plate, rail, plateBottom }: Layout): { z: number; top: number } {
  return beside
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
