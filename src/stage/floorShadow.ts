import { Box3, Mesh, MeshBasicMaterial, PlaneGeometry, type Vector3 } from 'three';
import type { Bin } from './bin.ts';
import { painted } from './textures.ts';

/** Size of the picture of the shadow, and of the machine's outline in it, pixels. */
const PICTURE = 256;
const OUTLINE = 128;

/** The soft shadow of a machine on the floor: painted once, since what stands on the floor does not move. */
export class FloorShadow {
  readonly mesh: Mesh<PlaneGeometry, MeshBasicMaterial>;

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
    const material = bin.own(
      new MeshBasicMaterial({ map: picture, transparent: true, depthWrite: false, toneMapped: false }),
    );
    this.mesh = new Mesh(bin.own(new PlaneGeometry(1, 1).rotateX(-Math.PI / 2)), material);
    this.mesh.renderOrder = -1;
  }

  set darkness(share: number) {
    this.mesh.material.opacity = share;
  }

  /** Under what these points enclose; the light comes from the upper left front. */
  place(points: readonly Vector3[], floor: number): void {
    const { min, max } = new Box3().setFromPoints([...points]);
    const grown = PICTURE / OUTLINE;
    const [length, width] = [max.x - min.x, max.z - min.z];
    this.mesh.scale.set(length * grown, 1, width * grown);
    this.mesh.position.set((min.x + max.x) / 2 + 0.02 * length, floor, (min.z + max.z) / 2 - 0.06 * width);
  }
}
