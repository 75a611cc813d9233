/** What is made up of each drive, so that the four differ as drives of their kinds do. SI, °C; none of it is measured. */
export interface SampleDrive {
  readonly preset: string;
  /** Settled rise over the room, K, and what the coolant leaves of the rise of winding and carrier. */
  readonly rise: {
    readonly winding: number;
    readonly carrier: number;
    readonly table: number;
    readonly screw: number;
  };
  readonly cooledShare: number;
  /** Time constants of carrier and of what it warms, s. */
  readonly carrierTime: number;
  readonly slowTime: number;
  /** Growth at the tool per kelvin of the table and of the screw, m/K. */
  readonly growthOfTable: number;
  readonly growthOfScrew: number;
  /** Force per ampere that a kelvin of the carrier costs. */
  readonly fluxLoss: number;
  /** Of one cycle, J. */
  readonly energy: {
    readonly returned: number;
    readonly copper: number;
    readonly iron: number;
    readonly guide: number;
    readonly nut: number;
    readonly other: number;
  };
  /** Of positioning, m: lost motion, scatter (one s), slope of the mean over the travel, and a wave along it. */
  readonly lostMotion: number;
  readonly scatter: number;
  readonly slope: number;
  readonly wave: number;
  /** Growth when warm at the far end, m, and the lost motion that wear adds. */
  readonly warm: number;
  readonly wear: number;
  /** Of the scan: lines of the ripple, share of the set speed, and where they come from. */
  readonly lines: readonly {
    readonly period: number;
    readonly amplitude: number;
    readonly cause: string | null;
  }[];
  readonly noise: number;
  readonly smallestStep: number | null;
  /** Under a force: dynamic stiffness, N/m, and recovery, s. */
  readonly stiffness: number;
  readonly recovery: number;
  /** Of the moves. */
  readonly settling: number | null;
  readonly peakError: number;
  readonly rmsForce: number;
  readonly peakForce: number;
  readonly rmsCurrent: number;
  readonly peakCurrent: number;
  readonly crossover: number;
}

export const SAMPLE_DRIVES: Readonly<Record<string, SampleDrive>> = {
  A: {
    preset: 'tubular',
    rise: { winding: 4.3, carrier: 3, table: 1.1, screw: 1.6 },
    cooledShare: 0.55,
    carrierTime: 640,
    slowTime: 2400,
    growthOfTable: 2.85e-6,
    growthOfScrew: 0,
    fluxLoss: 4e-4,
    energy: { returned: 3.1, copper: 14.8, iron: 0, guide: 7.9, nut: 0, other: 0.2 },
    lostMotion: 2e-8,
    scatter: 4e-8,
    slope: 0,
    wave: 6e-8,
    warm: 3.1e-6,
    wear: 0,
    lines: [
      { period: 2e-5, amplitude: 0.0016, cause: 'interpolation error, once per signal period' },
      { period: 1e-2, amplitude: 0.0007, cause: 'force ripple, 6th order' },
      { period: 1e-5, amplitude: 0.0005, cause: 'interpolation error, twice per signal period' },
    ],
    noise: 9e-10,
    smallestStep: 2e-9,
    stiffness: 3.2e7,
    recovery: 0.036,
    settling: 0.021,
    peakError: 7.8e-6,
    rmsForce: 80.4,
    peakForce: 131,
    rmsCurrent: 1.9,
    peakCurrent: 3.2,
    crossover: 92,
  },
  B: {
    preset: 'u-channel',
    rise: { winding: 5.8, carrier: 3.3, table: 1.4, screw: 1.6 },
    cooledShare: 0.6,
    carrierTime: 430,
    slowTime: 2300,
    growthOfTable: 2.83e-6,
    growthOfScrew: 0,
    fluxLoss: 1.6e-4,
    energy: { returned: 2.9, copper: 8.8, iron: 0, guide: 7.9, nut: 0, other: 0.2 },
    lostMotion: 3e-8,
    scatter: 5e-8,
    slope: 0,
    wave: 7e-8,
    warm: 4e-6,
    wear: 0,
    lines: [
      { period: 2e-5, amplitude: 0.0018, cause: 'interpolation error, once per signal period' },
      { period: 9.33e-3, amplitude: 0.0008, cause: 'force ripple, 6th order' },
      { period: 1e-5, amplitude: 0.0006, cause: 'interpolation error, twice per signal period' },
    ],
    noise: 1.1e-9,
    smallestStep: 2e-9,
    stiffness: 2.1e7,
    recovery: 0.044,
    settling: 0.026,
    peakError: 9.6e-6,
    rmsForce: 74.9,
    peakForce: 122,
    rmsCurrent: 1.8,
    peakCurrent: 3,
    crossover: 76,
  },
  C: {
    preset: 'flat',
    rise: { winding: 8.9, carrier: 7.4, table: 2.4, screw: 2.3 },
    cooledShare: 0.82,
    carrierTime: 1900,
    slowTime: 4200,
    growthOfTable: 2.85e-6,
    growthOfScrew: 0,
    fluxLoss: 2.8e-4,
    energy: { returned: 2.4, copper: 13.2, iron: 3.7, guide: 11.1, nut: 0, other: 0.3 },
    lostMotion: 4e-8,
    scatter: 6e-8,
    slope: 0,
    wave: 1.1e-7,
    warm: 6.9e-6,
    wear: 0,
    lines: [
      { period: 2.4e-2, amplitude: 0.021, cause: 'cogging, second term' },
      { period: 8e-3, amplitude: 0.017, cause: 'cogging, first term' },
      { period: 4.8e-2, amplitude: 0.006, cause: 'cogging, third term' },
      { period: 2e-5, amplitude: 0.0017, cause: 'interpolation error, once per signal period' },
    ],
    noise: 1e-9,
    smallestStep: 5e-9,
    stiffness: 2.6e7,
    recovery: 0.052,
    settling: 0.034,
    peakError: 1.9e-5,
    rmsForce: 92.2,
    peakForce: 168,
    rmsCurrent: 1.8,
    peakCurrent: 3.4,
    crossover: 81,
  },
  D: {
    preset: 'screw',
    rise: { winding: 18.9, carrier: 7.4, table: 1.1, screw: 27.4 },
    cooledShare: 0.78,
    carrierTime: 980,
    slowTime: 1300,
    growthOfTable: 1.84e-6,
    growthOfScrew: 5.55e-6,
    fluxLoss: 4.4e-4,
    energy: { returned: 0.6, copper: 10.9, iron: 0, guide: 7.9, nut: 34.4, other: 0.4 },
    lostMotion: 1.8e-6,
    scatter: 2.5e-7,
    slope: 6e-6,
    wave: 4e-7,
    warm: 1.54e-4,
    wear: 3e-6,
    lines: [
      { period: 8.33e-4, amplitude: 0.031, cause: 'cogging, first term' },
      { period: 8.33e-4 * 4, amplitude: 0.008, cause: null },
      { period: 9.77e-6, amplitude: 0.004, cause: 'interpolation error, once per signal period' },
    ],
    noise: 6e-9,
    smallestStep: null,
    stiffness: 6.5e6,
    recovery: 0.13,
    settling: 0.088,
    peakError: 6.2e-5,
    rmsForce: 149,
    peakForce: 214,
    rmsCurrent: 1.7,
    peakCurrent: 2.5,
    crossover: 28,
  },
};
