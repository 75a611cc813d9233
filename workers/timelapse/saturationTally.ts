/*
 * How the force per ampere of a saturating motor depends on its magnets, at the same force:
 *
 *   κ = Σ i² σ(i)/Σ i²,   σ(i) = 1/√(1 + (i/i_sat)²)       remaining force after saturation
 *   e = −d ln κ/d ln i = Σ i² σ³ (i/i_sat)²/Σ i² σ
 *   F ∝ m κ i  →  i ∝ m^−n,  F/i ∝ m^n,  n = 1/(1 − e)      with all currents growing alike as the magnets fade by m
 */
export class SaturationTally {
  readonly #perSaturation: number = 0;
  #force = 0;
  #lost = 0;

  /** i_sat in A; 0 never saturates. */
  constructor(saturationCurrent: number) {
    this.#perSaturation = saturationCurrent > 0 ? 1 / saturationCurrent : 0;
  }

  /** Takes one sample of the force current of one motor, A. */
  add(current: number): void {
    if (this.#perSaturation === 0) return;
    const share = (current * this.#perSaturation) ** 2;
    const sigma = 1 / Math.sqrt(1 + share);
    this.#force += current * current * sigma;
    this.#lost += current * current * sigma ** 3 * share;
  }

  /** n; 1 without current. */
  get fluxExponent(): number {
    return this.#force > 0 ? 1 / (1 - this.#lost / this.#force) : 1;
  }
}
