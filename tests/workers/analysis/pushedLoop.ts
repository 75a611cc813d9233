import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { SampledLoop } from '../../../workers/analysis/sampledLoop.ts';
import { root } from '../../../workers/math/root.ts';
import { barePreset, bareStanding, runAxis } from './barePreset.ts';

/*
 * The verdict of the analysis against what the simulation does: two programs that share the plant, but neither the solver nor the
 * controller. The axis stands in balance and gets a push of nanometres. An unstable loop has to grow until it trips, at 100 nm; a
 * stable one has to come to rest. Current and voltage limits are out of the way, so that nothing but the loop itself holds an
 * oscillation back (with them, a fast one stays too small to trip).
 */
const PUSH: ParameterChanges = {
  program: 'hold',
  process: 'pulse',
  processForce: 0.03,
  processTime: 1e-3,
  processFrequency: 0.01,
  followingErrorLimit: 1e-7,
  peakCurrent: 1000,
  continuousCurrent: 500,
  overloadTime: 120,
  busVoltage: 800,
};

/** Shares of the start gains: together, and each alone. */
const FACTORS = [0.3, 0.5, 1, 2, 3, 5, 10, 20, 30];
const SCALED = [['Kp', 'Kd', 'Ki'], ['Kp'], ['Kd'], ['Ki']] as const;
/** A verdict that so little more or less of all gains turns round is no verdict; how many there may be. */
const BAND = 0.005;
const MAX_IN_BAND = 2;

/** Samples run: what takes the slowest mode through so many e-folds, within bounds. */
const FOLDS = 8;
const MIN_SAMPLES = 2000;
const MAX_SAMPLES = 80_000;
/** What may be left at the end, of the peak. */
const REST = 0.01;

type Gain = (typeof SCALED)[number][number];

function withGains(p: Parameters, names: readonly Gain[], factor: number): Parameters {
  return { ...p, ...Object.fromEntries(names.map((name) => [name, p[name] * factor])) };
}

function spectralRadius(p: Parameters): number {
  const { re, im } = new SampledLoop(p, bareStanding(p)).eigenvalues;
  return Math.max(...re.map((value, k) => Math.hypot(value, at(im, k))));
}

/** 'trips', 'settles', or neither within the time. */
function simulated(p: Parameters, radius: number): string {
  const needed = FOLDS / Math.abs(Math.log(radius));
  const samples = Math.min(Math.max(Math.ceil(needed), MIN_SAMPLES), MAX_SAMPLES);
  let peak = 0;
  let late = 0;
  let taken = 0;
  const survived = runAxis(p, samples, (record) => {
    const error = Math.abs(at(record, C.followingError));
    peak = Math.max(peak, error);
    if (taken++ > 0.9 * samples) late = Math.max(late, error);
  });
  if (!survived) return 'trips';
  return late < REST * peak ? 'settles' : `${late} of ${peak} m left`;
}

/** The verdict of the analysis on a drive, over this grid of gains. */
export function verdictHolds(name: string, factors: readonly number[] = FACTORS): void {
  describe(name, () => {
    const p = barePreset(name, PUSH);

    it('does in the simulation what the eigenvalues say, over a grid of gains', () => {
      const wrong: string[] = [];
      const inBand: string[] = [];
      for (const gains of SCALED) {
        for (const factor of factors) {
          const tried = withGains(p, gains, factor);
          const label = `${gains.join(', ')} × ${factor}`;
          const verdicts = [1 - BAND, 1 + BAND].map(
            (share) => spectralRadius(withGains(tried, SCALED[0], share)) < 1,
          );
          if (verdicts[0] !== verdicts[1]) {
            inBand.push(label);
            continue;
          }
          const radius = spectralRadius(tried);
          const did = simulated(tried, radius);
          if (did !== (radius < 1 ? 'settles' : 'trips')) wrong.push(`${label}: ${radius}, ${did}`);
        }
      }
      expect(wrong).toEqual([]);
      expect(inBand.length).toBeLessThanOrEqual(MAX_IN_BAND);
    });

    it('turns from settling to tripping within 1 % of the gain that the gain margin names', () => {
      const { gainMargin } = analyse(p, bareStanding(p)).figures;
      for (const [share, expected] of [
        [0.99, 'settles'],
        [1.01, 'trips'],
      ] as const) {
        const tried = withGains(p, SCALED[0], present(gainMargin).value * share);
        expect(simulated(tried, spectralRadius(tried))).toBe(expected);
      }
    });

    it('names the same gain by its margin and by its eigenvalues', () => {
      const { gainMargin } = analyse(p, bareStanding(p)).figures;
      const excess = (factor: number) => spectralRadius(withGains(p, SCALED[0], factor)) - 1;
      const critical = root(excess, present(gainMargin).value * 0.9, present(gainMargin).value * 1.1);
      expect(Math.abs(critical / present(gainMargin).value - 1)).toBeLessThan(1e-8);
    });

    it('grows as fast as its largest eigenvalue says', () => {
      const { gainMargin } = analyse(p, bareStanding(p)).figures;
      const tried = withGains(p, SCALED[0], present(gainMargin).value * 1.05);
      const errors: number[] = [];
      runAxis({ ...tried, processForce: 1e-3 }, MAX_SAMPLES, (record) => {
        errors.push(Math.abs(at(record, C.followingError)));
      });
      // Peaks of the last two quarters: by then the slow modes have died away and the growing one is alone.
      const quarter = Math.floor(errors.length / 4);
      const peak = (from: number) => Math.max(...errors.slice(from, from + quarter));
      const growth = Math.log(peak(3 * quarter) / peak(2 * quarter)) / quarter;
      expect(Math.abs(growth / Math.log(spectralRadius(tried)) - 1)).toBeLessThan(0.02);
    });
  });
}
