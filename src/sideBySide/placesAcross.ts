/** Passage between two machines, as a share of the mean width. */
const PASSAGE = 0.45;

interface Width {
  readonly zMin: number;
  readonly zMax: number;
}

/** Where machines stand across, z in m, so that equal passages are between them: the first furthest from the operator. */
export function placesAcross(machines: readonly Width[]): number[] {
  const total = machines.reduce((sum, { zMin, zMax }) => sum + zMax - zMin, 0);
  const passage = (PASSAGE * total) / Math.max(machines.length, 1);
  let z = 0;
  return machines.map(({ zMin, zMax }) => {
    const place = z - zMin;
    z += zMax - zMin + passage;
    return place;
  });
}
