import { describe, expect, it } from 'vitest';
import { coilCurrent, phaseCurrents } from '../../../src/stage/build/electrics.ts';

const THIRD = (2 * Math.PI) / 3;
const angles = Array.from({ length: 37 }, (_, i) => -7 + 0.41 * i);

describe('phase currents from field and force current', () => {
  it('sum to zero, as a winding without neutral must (Kirchhoff)', () => {
    for (const angle of angles) {
      const [a, b, c] = phaseCurrents(1.3, -4.2, angle);
      expect(Math.abs(a + b + c)).toBeLessThan(1e-14 * 40);
    }
  });

  it('have the amplitude of the current vector and come back through the forward transform', () => {
    for (const angle of angles) {
      const phases = phaseCurrents(1.3, -4.2, angle);
      // Park's transform, amplitude-invariant: Krause, Analysis of Electric Machinery and Drive Systems, ch. 3.
      const at = (k: number) => angle - k * THIRD;
      const d = (2 / 3) * phases.reduce((sum, i, k) => sum + i * Math.cos(at(k)), 0);
      const q = (-2 / 3) * phases.reduce((sum, i, k) => sum + i * Math.sin(at(k)), 0);
      expect(d).toBeCloseTo(1.3, 12);
      expect(q).toBeCloseTo(-4.2, 12);
      const squares = phases.reduce((sum, i) => sum + i * i, 0);
      expect(squares).toBeCloseTo(1.5 * (1.3 ** 2 + 4.2 ** 2), 10);
    }
  });

  it('put the field current into phase a alone at angle zero, and half of it back through b and c', () => {
    expect(phaseCurrents(2, 0, 0).map((i) => Number(i.toFixed(12)))).toEqual([2, -1, -1]);
    expect(phaseCurrents(0, 2, 0)[0]).toBeCloseTo(0, 12);
  });
});

describe('the current around a coil', () => {
  it('follows as a, −b, c, −a, b, −c in coils a third of a pole pitch apart', () => {
    const angle = 0.7;
    const [a, b, c] = phaseCurrents(0.5, 3, angle);
    const seen = [0, 1, 2, 3, 4, 5].map((k) => coilCurrent(0.5, 3, angle + (k * Math.PI) / 3));
    [a, -b, c, -a, b, -c].forEach((current, k) => {
      expect(seen[k]).toBeCloseTo(current, 12);
    });
  });

  it('follows as a, b, c in tooth coils four thirds of a pole pitch apart', () => {
    const angle = -1.9;
    const phases = phaseCurrents(0.5, 3, angle);
    phases.forEach((current, k) => {
      expect(coilCurrent(0.5, 3, angle + (k * 4 * Math.PI) / 3)).toBeCloseTo(current, 12);
    });
  });

  it('pushes the same way everywhere: force current times the magnets it sees never changes sign', () => {
    for (const angle of angles)
      for (let k = 0; k < 6; k++) {
        const at = angle + (k * Math.PI) / 3;
        expect(-coilCurrent(0, 3, at) * Math.sin(at)).toBeGreaterThanOrEqual(0);
      }
  });
});
