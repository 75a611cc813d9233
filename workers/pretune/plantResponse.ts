import type { Parameters } from '../../shared/core/parameters/table.ts';
import { type OperatingPoint, startingPoint } from '../../shared/protocol/analysis.ts';
import { type DrivenAxis, drivenAxis } from '../analysis/drivenAxis.ts';
import { linearise } from '../analysis/linearise.ts';
import { type Complex, magnitude, phase, unit } from '../math/complex.ts';
import { ComplexArray } from '../math/complexArray.ts';
import { logSpaced } from '../math/logSpaced.ts';
import { Transfer } from '../math/transfer.ts';

/** Lowest frequency of a design, Hz. */
const LOWEST = 0.5;
/** An observer adds an integrator, and the loop on the bristles of a standing guide then crosses over far below. */
const LOWEST_WITH_OBSERVER = 0.02;
/** A mode with less damping than this stands out in the response and gets points of its own. */
const STANDS_OUT = 0.3;
/** Positions of these points, in half widths of the peak. */
const ROUND_A_PEAK = [-3, -1.5, -0.7, 0, 0.7, 1.5, 3] as const;

/** A resonance of the axis under its current loop. */
interface Mode {
  /** Hz */
  readonly frequency: number;
  readonly damping: number;
}

/** The axis at one operating point as seen by its position loop. */
export interface PlantState {
  readonly axis: DrivenAxis;
  /** Encoder reading over current command, m/A, over the frequencies. */
  readonly response: ComplexArray;
  /** Of the encoder that the speed is measured from: the same unless the loop is a dual one. */
  readonly speedResponse: ComplexArray;
  /** Ascending. */
  readonly modes: readonly Mode[];
}

export interface PlantResponse {
  /** rad/s, ascending, up to half the rate of the position loop, and z = exp(jωTp). */
  readonly omega: readonly number[];
  readonly z: readonly Complex[];
  readonly standing: PlantState;
  readonly sliding: PlantState;
}

/**
 * Where a loop must be sound: standing, where the bristles of the guide hold the table like a
 * spring, and sliding, where they do not. A table that comes to rest passes from one to the other.
 */
export function designPoints(p: Parameters): { standing: OperatingPoint; sliding: OperatingPoint } {
  const standing = startingPoint(p);
  return { standing, sliding: { ...standing, friction: 'sliding' } };
}

/** @param points on the logarithmic scale; the modes get more */
export function plantResponse(p: Parameters, points: number): PlantResponse {
  const period = p.positionDivider / p.currentRate;
  const at = (point: OperatingPoint) => {
    const axis = drivenAxis(p, linearise(p, point));
    const transfer = new Transfer(axis.a, axis.command, axis.reading);
    const speedTransfer =
      p.speedSource === 'motor encoder' ? new Transfer(axis.a, axis.command, axis.speedReading) : transfer;
    return { axis, transfer, speedTransfer, modes: modesOf(transfer, period) };
  };
  const { standing, sliding } = designPoints(p);
  const [stands, slides] = [at(standing), at(sliding)];

  const lowest = 2 * Math.PI * (p.observer ? LOWEST_WITH_OBSERVER : LOWEST);
  const highest = Math.PI / period;
  const peaks = [...stands.modes, ...slides.modes].flatMap(({ frequency, damping }) =>
    ROUND_A_PEAK.map((k) => 2 * Math.PI * frequency * (1 + k * damping)),
  );
  const inside = peaks.filter((w) => w > lowest && w < highest);
  const omega = [...logSpaced(lowest, highest, points), ...inside].sort((a, b) => a - b);
  const z = omega.map((w) => unit(w * period));
  const state = ({ axis, transfer, speedTransfer, modes }: ReturnType<typeof at>): PlantState => {
    const response = ComplexArray.from(z.map((each) => transfer.first(each)));
    const speedResponse =
      speedTransfer === transfer ? response : ComplexArray.from(z.map((each) => speedTransfer.first(each)));
    return { axis, response, speedResponse, modes };
  };
  return { omega, z, standing: state(stands), sliding: state(slides) };
}

/** Natural frequency and damping of the oscillating eigenvalues that stand out: s = ln z/Tp. */
function modesOf(transfer: Transfer, period: number): Mode[] {
  const modes: Mode[] = [];
  for (const z of transfer.eigenvalues().toList()) {
    if (!(z.im > 0)) continue;
    const decay = -Math.log(magnitude(z)) / period;
    const omega = Math.hypot(decay, phase(z) / period);
    const damping = decay / omega;
    if (damping < STANDS_OUT) modes.push({ frequency: omega / (2 * Math.PI), damping });
  }
  return modes.sort((a, b) => a.frequency - b.frequency);
}
