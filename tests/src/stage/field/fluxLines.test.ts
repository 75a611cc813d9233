import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../../scenes/index.ts';
import { type MotorFlux, motorFlux } from '../../../../shared/axis/flux/motorFlux.ts';
import { motorSize } from '../../../../shared/axis/motorSize.ts';
import { present } from '../../../../shared/core/at.ts';
import { defaultParameters, type ParameterChanges } from '../../../../shared/core/parameters/table.ts';
import type { DriveType } from '../../../../shared/core/scene.ts';
import { FluxLines, type FluxState } from '../../../../src/stage/field/fluxLines.ts';
import { sectionOf } from '../../../../src/stage/field/section.ts';

const kit = (form: DriveType, changes: ParameterChanges = {}) => ({
  ...defaultParameters(),
  ...present(PRESETS[form]).parameters,
  ...changes,
});

function sectionFor(form: DriveType, changes: ParameterChanges = {}) {
  const p = kit(form, changes);
  const flux = motorFlux(form, p) as MotorFlux;
  return { p, flux, section: present(sectionOf(motorSize(form, p), flux, p)) };
}

/** Where along the axis the lines cross a height, m from the left edge, sorted. */
function crossings(lines: FluxLines, state: FluxState, width: number, share: number): number[] {
  const found: number[] = [];
  lines.trace(state, (x1, y1, x2, y2) => {
    if (y1 < share === y2 < share) return;
    found.push(width * (x1 + ((x2 - x1) * (share - y1)) / (y2 - y1)));
  });
  return found.sort((a, b) => a - b);
}

const QUIET: FluxState = { left: 0, force: 0, across: 0, magnet: 1 };

describe('flux lines', () => {
  it.each(['flat', 'u-channel'] as const)(
    'of the %s motor: as many as the flux between them says',
    (form) => {
      const { flux, section } = sectionFor(form);
      const { low, high } = section.field;
      const tau = flux.polePitch;
      // All flux of a pole crosses the plane of the winding within one pole pitch; ten lines share it.
      let pole = 0;
      for (let n = 1; n <= 15; n += 2)
        pole += 2 * flux.magnets(n, flux.winding.middle).potential * Math.sin((n * Math.PI) / 2);
      const lines = new FluxLines(flux, section.field, 2 * tau, Math.abs(pole) / 10, [400, 60], false);
      // Just before the face, where the last row of cells ends.
      const share = (flux.winding.middle - low) / (high - low) - 1e-3;
      const places = crossings(lines, QUIET, 2 * tau, share);
      expect(places).toHaveLength(20);
      // Ten on either side of where the field changes its sign, which is half a pole pitch from the middle of a pole.
      expect(places.filter((x) => x > tau / 2 && x < 1.5 * tau)).toHaveLength(10);
    },
  );

  it('of the currents alone cross where the winding has no force current, and turn with the field of the magnets', () => {
    const { flux, section } = sectionFor('u-channel');
    const tau = flux.polePitch;
    const step = 1e5 * flux.sheetPotential(0) * 0.4;
    const lines = new FluxLines(flux, section.field, 2 * tau, step, [400, 60], false);
    const at = (left: number) => crossings(lines, { left, force: 1e5, across: 0, magnet: 0 }, 2 * tau, 0.5);
    const [here, there] = [at(0), at(0.25 * tau)];
    expect(here.length).toBeGreaterThan(5);
    // A picture that begins a quarter of a pole later shows the same lines a quarter of a pole to the left.
    for (const x of there.filter((each) => each < 1.5 * tau))
      expect(Math.min(...here.map((each) => Math.abs(each - 0.25 * tau - x)))).toBeLessThan(0.01 * tau);
  });
});

describe('the section', () => {
  it('of an eccentric shaft has the near gap as much narrower as the far one is wider', () => {
    const gaps = (coilOffset: number) => {
      const { section, flux } = sectionFor('tubular', { coilOffset, airGap: 1.5e-3 });
      const inner = section.sides.map(({ low, high }) => Math.min(Math.abs(low), Math.abs(high)));
      const shaft = present(section.shaft).high;
      return { upper: (inner[0] as number) - shaft, lower: (inner.at(-1) as number) - shaft, flux };
    };
    const { upper, lower } = gaps(0);
    expect(upper).toBeCloseTo(lower, 12);
    const moved = gaps(0.8e-3);
    expect(moved.upper - upper).toBeCloseTo(0.8e-3, 12);
    expect(lower - moved.lower).toBeCloseTo(0.8e-3, 12);
  });

  it('of a flat motor opens by as much as the gap', () => {
    const height = (airGap: number) => sectionFor('flat', { airGap }).section.field.high;
    expect(height(2.5e-3) - height(0.5e-3)).toBeCloseTo(2e-3, 12);
  });

  it('is missing where no field is computed', () => {
    expect(motorFlux('screw', kit('screw'))).toBeNull();
  });
});
