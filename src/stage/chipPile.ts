import { Group, InstancedMesh, type Material, Matrix4, TetrahedronGeometry, Vector3 } from 'three';
import { bedKey, type Chip, type ChipBed, chipBed, metBy } from '../../shared/axis/chips/chipBed.ts';
import { at, valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import { PARAMETERS, type Parameters } from '../../shared/core/parameters/table.ts';
import type { SweptChips } from '../../shared/core/sweptChips.ts';
import type { Layout } from './build/layout.ts';
import type { Point } from './build/solids.ts';
import { chipText } from './chipText.ts';

/** Drawn so much larger than they are: a chip of a millimetre would be a dot. */
const ENLARGED = 4;
/** The text changes this often, ms. */
const PACE = 300;
const MOST = PARAMETERS.chipCount.max;

/** Chips on the magnets, where the model has them. */
export class ChipPile {
  readonly group = new Group();
  text = '';
  readonly #mesh: InstancedMesh;
  readonly #matrix = new Matrix4();
  readonly #size = new Vector3();
  #bed: ChipBed | null = null;
  #p: Parameters | null = null;
  #made = '';
  #shown = '';
  #told = 0;

  constructor(material: Material) {
    this.#mesh = new InstancedMesh(new TetrahedronGeometry(0.5), material, MOST);
    this.#mesh.frustumCulled = false;
    this.#mesh.count = 0;
    this.group.add(this.#mesh);
  }

  /** Puts every chip where it is now. Returns whether one moved. */
  place(plan: Layout, p: Parameters, swept: SweptChips | null, now: Float64Array): boolean {
    this.#tell(p, swept, this.#take(p));
    const unit = valueAt(now, C.motorPosition);
    const shown = swept ? `${this.#made} ${swept.poured} ${swept.from} ${swept.to} ${unit}` : '';
    if (shown === this.#shown) return false;
    this.#shown = shown;
    this.#mesh.count = 0;
    if (this.#bed && swept) this.#put(this.#bed, plan, swept, unit);
    this.#mesh.instanceMatrix.needsUpdate = true;
    return true;
  }

  /** Whether the parameters make another bed than before. */
  #take(p: Parameters): boolean {
    if (p === this.#p) return false;
    this.#p = p;
    const made = bedKey(p);
    if (made === this.#made) return false;
    this.#made = made;
    this.#bed = chipBed(p);
    return true;
  }

  dispose(): void {
    this.#mesh.geometry.dispose();
    this.#mesh.dispose();
  }

  #tell(p: Parameters, swept: SweptChips | null, isOther: boolean): void {
    const time = performance.now();
    if (!isOther && time - this.#told < PACE) return;
    this.#told = time;
    this.text = chipText(p, this.#bed, swept, ENLARGED);
  }

  #put({ chips, magnets }: ChipBed, plan: Layout, swept: SweptChips, unit: number): void {
    const { poured, from, to } = swept;
    const half = magnets.unitLength / 2;
    for (const chip of chips) {
      const { seat, of } = chip;
      const met = metBy(seat, magnets.unitLength, poured, from, to);
      if (Number.isNaN(met)) continue;
      const { diameter, fate } = of;
      // Ahead of what pushes them they lie in a heap a few chips deep.
      const heap = (0.5 + 3 * Math.abs(chip.across)) * diameter;
      const end = met > 0 ? to + half + heap : from - half - heap;
      const x = met === 0 || fate === 'passes' ? seat : fate === 'pushed' ? end : unit + met * half;
      const size = ENLARGED * diameter;
      this.#matrix.makeRotationY(40 * chip.across).scale(this.#size.setScalar(size));
      this.#matrix.setPosition(...placeOn(plan, chip, x, size / 2));
      this.#mesh.setMatrixAt(this.#mesh.count++, this.#matrix);
    }
  }
}

/** On the face of the magnets of the first track, `height` above it. */
function placeOn({ motor, driveHeight, tracks }: Layout, { across }: Chip, x: number, height: number): Point {
  const track = at(tracks, 0);
  switch (motor.driveType) {
    case 'flat': {
      const { backIron, magnet } = motor;
      return [x, driveHeight + backIron + magnet.height + height / 2, track + (across * magnet.width) / 2];
    }
    case 'u-channel': {
      const { channelHeight, magnet, bladeWidth, gap } = motor;
      const side = Math.sign(across) * (bladeWidth / 2 + gap);
      return [x, driveHeight + channelHeight - magnet.height * (1 - Math.abs(across)), track + side];
    }
    case 'tubular': {
      const radius = motor.shaftRadius + height / 2;
      const angle = Math.PI * across;
      return [x, driveHeight + radius * Math.cos(angle), track + radius * Math.sin(angle)];
    }
    case 'screw':
      return [x, driveHeight, track];
  }
}
