import { Box3, Group, Mesh, MeshBasicMaterial, PlaneGeometry, type Vector3 } from 'three';
import type { Bin } from './build/bin.ts';
import { painted } from './build/textures.ts';

/** Size of the picture of the shadow, and of the machine's outline in it, pixels. */
const PICTURE = 256;
const OUTLINE = 128;

/** What stands on the floor: its outermost points, and the height of the floor. */
export interface Standing {
  readonly extent: readonly Vector3[];
  readonly floor: number;
}

/** The soft shadow of machines on the floor: painted once, since what stands on the floor does not move. */
export class FloorShadow {
  readonly group = new Group();
  readonly #material: MeshBasicMaterial;
  readonly #plane: PlaneGeometry;

  constructor(bin: Bin) {
    const picture = bin.own(
      painted(PICTURE, PICTURE, { colour: true, repeat: false }, (pen) => {
        const edge = (PICTURE - OUTLINE) / 2;
        // The outline itself stays outside the picture; only its blurred shadow falls into it.
        pen.shadowColor = '#000000';
        pen.shadowOffsetX = PICTURE;
        for (const [blur, alpha, inset] of [
          [50, 0.5, 0],
          [34, 0.45, 0],
          [12, 0.4, 6],
        ] as const) {
          pen.globalAlpha = alpha;
          pen.shadowBlur = blur;
          pen.fillRect(edge + inset - PICTURE, edge + inset, OUTLINE - 2 * inset, OUTLINE - 2 * inset);
        }
      }),
    );
    this.#material = bin.own(
      new MeshBasicMaterial({ map: picture, transparent: true, depthWrite: false, toneMapped: false }),
    );
    this.#plane = bin.own(new PlaneGeometry(1, 1).rotateX(-Math.PI / 2));
  }

  set darkness(share: number) {
    this.#material.opacity = share;
  }

  /** Under each of these; the light comes from the upper left front. */
  place(standing: readonly Standing[]): void {
    this.group.clear();
    for (const each of standing) this.group.add(this.#under(each));
  }

  #under({ extent, floor }: Standing): Mesh {
    const mesh = new Mesh(this.#plane, this.#material);
    mesh.renderOrder = -1;
    const { min, max } = new Box3().setFromPoints([...extent]);
    const grown = PICTURE / OUTLINE;
    const [length, width] = [max.x - min.x, max.z - min.z];
    mesh.scale.set(length * grown, 1, width * grown);
    mesh.position.set((min.x + max.x) / 2 + 0.02 * length, floor, (min.z + max.z) / 2 - 0.06 * width);
    return mesh;
  }
}
