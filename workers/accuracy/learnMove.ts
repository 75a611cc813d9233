import { motorConstants } from '../../shared/axis/motor.ts';
import { at, valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import { positionRate } from '../../shared/core/crossChecks.ts';
import { ranged } from '../../shared/core/format.ts';
import { moveLearned } from '../../shared/core/learnedMove.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { startingPoint } from '../../shared/protocol/analysis.ts';
import type { LearningOutcome } from '../../shared/protocol/learnMove.ts';
import { SampledLoop } from '../analysis/sampledLoop.ts';
import { type Complex, magnitude, scaled, ZERO } from '../math/complex.ts';
import { rms } from '../math/statistics.ts';
import { Axis } from '../run/axis.ts';
import { tripOf } from '../run/tripOf.ts';
import { batchSolver } from '../solver/engine.ts';
import { harmonicsOf, sumOfHarmonics } from './harmonics.ts';

/*
 * Iterative learning of a force over a repeated move: u, force over one cycle, and e, following error, as Fourier series of the cycle.
 *
 *   u_{j+1} = Q (u_j + L e_j)
 *   L = C K_f        the feedback of the loop itself; with G from u to the reading, L G = T, so 1 − L G = S
 *   Q = 1/(1 + (f/f_L)⁸)     real, so without phase
 *
 * It converges when |Q (1 − L G)| = |Q S| < 1 at all frequencies: Bristow, Tharayil, Alleyne, A survey of iterative learning control,
 * IEEE Control Systems 26(3), 2006, 96–114.
 */

const ITERATIONS = 8;
/** Q is left out beyond this multiple of its bandwidth, where it is below 2·10⁻⁵. */
const Q_ENDS = 4;
const Q_ORDER = 8;
/** Longest cycle, s, and with it the simulated time of a run. */
const LONGEST_CYCLE = 10;
/** The learning stops when the RMS error exceeds the first by this factor. */
const DIVERGED = 1.5;
/** Frequencies that the condition is checked at in each bandwidth. */
const CHECKED = 100;

export function learningFilter(f: number, bandwidth: number): number {
  return 1 / (1 + (f / bandwidth) ** Q_ORDER);
}

/** Largest |Q S| of the loop with the guide sliding and at rest, and its frequency, Hz. */
export function learningRate(p: Parameters): { readonly rate: number; readonly frequency: number } {
  const nyquist = positionRate(p) / 2;
  const bandwidth = p.learningBandwidth;
  let worst = { rate: 0, frequency: 0 };
  for (const friction of ['sliding', 'presliding'] as const) {
    const loop = new SampledLoop(p, { ...startingPoint(p), friction });
    for (let k = 1; k <= Q_ENDS * CHECKED; k++) {
      const frequency = (bandwidth * k) / CHECKED;
      if (frequency >= nyquist) break;
      const { sensitivity } = loop.at(2 * Math.PI * frequency);
      const rate = learningFilter(frequency, bandwidth) * magnitude(sensitivity);
      if (rate > worst.rate) worst = { rate, frequency };
    }
  }
  return worst;
}

export function learnMove(scene: Scene): LearningOutcome {
  const p = scene.parameters;
  if (p.program !== 'shuttle' && p.program !== 'scan') {
    return { refused: 'Learning needs a move that repeats: choose the program shuttle or scan.' };
  }
  const { rate, frequency } = learningRate(p);
  if (rate >= 1) {
    return {
      refused: `It would not converge: at ${ranged(frequency, 'Hz')} each repeat multiplies the error by ${rate.toFixed(2)}. Lower the learning bandwidth of ${ranged(p.learningBandwidth, 'Hz')}.`,
    };
  }
  return repeated(scene, rate, frequency);
}

/** One cycle after the other; after each pair of them, the second is learned from. */
function repeated(scene: Scene, worstRate: number, worstFrequency: number): LearningOutcome {
  const p = scene.parameters;
  const samples = new Float64Array(Math.ceil(LONGEST_CYCLE * positionRate(p)));
  const first = cycleOf(new Axis(withForces(scene, new Float64Array(0)), { solver: batchSolver }), samples);
  if (first === null)
    return { refused: `A cycle may last ${LONGEST_CYCLE} s at most: shorten the move or its dwell.` };
  const forces = new Float64Array(first);
  const axis = new Axis(withForces(scene, forces), { solver: batchSolver });
  const learner = new Learner(p, first);
  const [peaks, errors]: [number[], Float64Array[]] = [[], []];
  for (let j = 0; j < ITERATIONS; j++) {
    // The first cycle after a change still remembers the one before.
    for (let pass = 0; pass < 2; pass++) if (cycleOf(axis, samples) === null) return { trip: tripOf(axis) };
    const error = samples.slice(0, first);
    errors.push(error);
    peaks.push(error.reduce((peak, e) => Math.max(peak, Math.abs(e)), 0));
    if (rms(error) > DIVERGED * rms(at(errors, 0))) {
      return {
        refused: `It does not converge: the error grew in repeat ${j + 1}. Lower the learning bandwidth.`,
      };
    }
    if (j < ITERATIONS - 1) forces.set(learner.learn(error));
  }
  const course = {
    peaks,
    rms: errors.map((error) => rms(error)),
    before: at(errors, 0),
    after: at(errors, errors.length - 1),
    worstRate,
    worstFrequency,
    bandwidth: p.learningBandwidth,
  };
  return { learned: { forces: forces.slice(), move: moveLearned(p), course } };
}

function withForces(scene: Scene, forces: Float64Array): Scene {
  return { ...scene, learnedMove: { forces, move: moveLearned(scene.parameters) } };
}

/** Records the following error over one cycle; its number of samples, or null when it trips or does not end. */
function cycleOf(axis: Axis, errors: Float64Array): number | null {
  const { cycle } = axis.command;
  let count = 0;
  while (count < errors.length) {
    const samples = axis.atPositionSample;
    if (!axis.step()) return null;
    if (!samples) continue;
    if (axis.command.cycle !== cycle) return count;
    errors[count++] = valueAt(axis.motion, C.followingError);
  }
  return null;
}

class Learner {
  readonly #filters: readonly Complex[];
  readonly #weights: readonly number[];
  #force: Complex[];
  readonly #samples: number;

  constructor(p: Parameters, samples: number) {
    const rate = positionRate(p);
    const spacing = rate / samples;
    const count = Math.min(Math.floor((Q_ENDS * p.learningBandwidth) / spacing), Math.floor(samples / 2) - 1);
    const loop = new SampledLoop(p, { ...startingPoint(p), friction: 'sliding' });
    const { forcePerAmp } = motorConstants(p);
    const frequencies = Array.from({ length: count }, (_, k) => (k + 1) * spacing);
    this.#weights = frequencies.map((f) => learningFilter(f, p.learningBandwidth));
    this.#filters = frequencies.map((f) => scaled(loop.feedback(2 * Math.PI * f), forcePerAmp));
    this.#force = frequencies.map(() => ZERO);
    this.#samples = samples;
  }

  /** The next force over the cycle, N, from the error (m) that the present one left. */
  learn(error: Float64Array): Float64Array {
    const errors = harmonicsOf(error, this.#force.length);
    this.#force = this.#force.map((u, k) => {
      const [l, e, q] = [at(this.#filters, k), at(errors, k), at(this.#weights, k)];
      return {
        re: q * (u.re + l.re * e.re - l.im * e.im),
        im: q * (u.im + l.re * e.im + l.im * e.re),
      };
    });
    return sumOfHarmonics(this.#force, this.#samples);
  }
}
