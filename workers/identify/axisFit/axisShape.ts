import { valueAt } from '../../../shared/core/at.ts';
import { type ModeSide, motorSideMass } from '../../../shared/core/movedMass.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { type Complex, ONE, over, plus, times, unit } from '../../math/complex.ts';
import { positionOverForce } from '../fit/twoMass.ts';

/** What an axis may consist of: motor and table rigid or on a link, and flexible parts on either. */
export interface AxisShape {
  readonly hasLink: boolean;
  /** The side of each flexible part. */
  readonly modes: readonly ModeSide[];
}

/** Values of a shape. SI; frequencies in rad/s. */
export interface AxisValues {
  /** Of the table side, its flexible parts included. */
  readonly tableMass: number;
  readonly delay: number;
  readonly link: { readonly stiffness: number; readonly damping: number } | null;
  readonly modes: readonly ModeValues[];
}

interface ModeValues {
  readonly side: ModeSide;
  readonly mass: number;
  readonly omega: number;
  readonly damping: number;
}

/** A side may not lose more than this to its flexible parts: what the table of parameters allows as well. */
const RIGID_SHARE = 0.1;

/** Unknowns of a search: logarithms of what is above zero, and the delay. */
export function packed({ tableMass, delay, link, modes }: AxisValues): number[] {
  return [
    Math.log(tableMass),
    delay,
    ...(link ? [Math.log(link.stiffness), Math.log(link.damping)] : []),
    ...modes.flatMap(({ mass, omega, damping }) => [Math.log(mass), Math.log(omega), Math.log(damping)]),
  ];
}

export function unpacked({ hasLink, modes }: AxisShape, x: Float64Array): AxisValues {
  const first = hasLink ? 4 : 2;
  return {
    tableMass: Math.exp(valueAt(x, 0)),
    delay: valueAt(x, 1),
    link: hasLink ? { stiffness: Math.exp(valueAt(x, 2)), damping: Math.exp(valueAt(x, 3)) } : null,
    modes: modes.map((side, k) => ({
      side,
      mass: Math.exp(valueAt(x, first + 3 * k)),
      omega: Math.exp(valueAt(x, first + 3 * k + 1)),
      damping: Math.exp(valueAt(x, first + 3 * k + 2)),
    })),
  };
}

/**
 * Position at the encoder over commanded force, m/N: two masses, the current loop as it is set and a delay. A flexible part changes the
 * mass of its side to m* + m_f (ω_f² + 2jD ω_f ω)/(ω_f² − ω² + 2jD ω_f ω). NaN where the parts leave too little of a side.
 * Source: den Hartog, Mechanical Vibrations, 4th ed. 1956, 3.2.
 */
export function axisResponse(p: Parameters, { tableMass, delay, link, modes }: AxisValues) {
  const motorMass = motorSideMass(p);
  const side = p.encoderSide === 'load' ? 'load' : 'motor';
  // The current loop with its pole cancelled: an integrator behind 1.5 periods. What else delays is fitted.
  const bandwidth = 2 * Math.PI * p.currentBandwidth;
  const parts = (on: ModeSide) => modes.filter((mode) => mode.side === on);
  const [onTable, onMotor] = [parts('table'), parts('motor side')];
  return (w: number): Complex => {
    const table = dynamicMass(tableMass, onTable, w);
    const motor = dynamicMass(motorMass, onMotor, w);
    const plant = link
      ? positionOverForce(
          w,
          {
            motorMass: motor.re,
            motorDamping: -w * motor.im,
            tableMass: table.re,
            guideStiffness: 0,
            guideDamping: -w * table.im,
            ...link,
          },
          side,
        )
      : over({ re: -1 / (w * w), im: 0 }, plus(motor, table));
    const current = plus(ONE, times({ re: 0, im: w / bandwidth }, unit((1.5 * w) / p.currentRate)));
    return over(times(plant, unit(-w * delay)), current);
  };
}

function dynamicMass(whole: number, modes: readonly ModeValues[], w: number): Complex {
  let rigid = whole;
  let sum: Complex = { re: 0, im: 0 };
  for (const { mass, omega, damping } of modes) {
    rigid -= mass;
    const drag = 2 * damping * omega * w;
    const swing = over({ re: omega * omega, im: drag }, { re: omega * omega - w * w, im: drag });
    sum = plus(sum, { re: mass * swing.re, im: mass * swing.im });
  }
  return rigid < RIGID_SHARE * whole ? { re: Number.NaN, im: 0 } : plus({ re: rigid, im: 0 }, sum);
}
