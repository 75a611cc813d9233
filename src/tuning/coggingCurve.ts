import { type CoggingTable, tablePeak } from '../../shared/core/coggingTable.ts';
import { curvePoints } from './curvePoints.ts';

/** Size of the drawing in its own units. */
const WIDTH = 300;
const HEIGHT = 60;

/** Force over position of a learned table, with a line at zero, as an SVG drawing scaled to its peak. */
export function coggingCurve(table: CoggingTable): string {
  const points = curvePoints(table.forces, tablePeak(table), WIDTH, HEIGHT);
  const half = HEIGHT / 2;
  return (
    `<svg viewBox="0 0 ${WIDTH} ${HEIGHT}" preserveAspectRatio="none" role="img" aria-label="Force of the cogging table over position">` +
    `<line x1="0" x2="${WIDTH}" y1="${half}" y2="${half}"/><polyline points="${points}"/></svg>`
  );
}
