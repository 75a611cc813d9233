import type { NumberRow } from '../../../shared/core/parameters/row.ts';

/**
 * A slider has whole positions from 0 to `steps`. On a logarithmic row a step is about one per cent; a row that may be
 * zero has "off" at position 0 and its range from position 1 on.
 */
export interface SliderScale {
  readonly steps: number;
  /** SI value at a position, rounded to what the step resolves. */
  valueAt(position: number): number;
  positionOf(value: number): number;
}

const LOG_STEP = Math.log(1.01);
const LINEAR_STEPS = 400;

export function sliderScale(row: NumberRow): SliderScale {
  return row.scale === 'log' ? logarithmic(row) : evenly(row);
}

function logarithmic({ min, max, zero, integer }: NumberRow): SliderScale {
  const first = zero ? 1 : 0;
  const span = Math.log(max / min);
  const steps = first + Math.round(span / LOG_STEP);
  return {
    steps,
    valueAt(position) {
      if (position < first) return 0;
      if (position >= steps) return max;
      const value = min * Math.exp((span * (position - first)) / (steps - first));
      return clamp(integer ? Math.round(value) : Number(value.toPrecision(3)), min, max);
    },
    positionOf(value) {
      if (value < min) return 0;
      return clamp(first + Math.round(((steps - first) * Math.log(value / min)) / span), first, steps);
    },
  };
}

function evenly({ min, max, integer }: NumberRow): SliderScale {
  const span = max - min;
  const steps = integer ? Math.min(span, LINEAR_STEPS) : LINEAR_STEPS;
  return {
    steps,
    valueAt(position) {
      const value = min + (span * position) / steps;
      // Rounded to a thousandth of the span, or the middle of a symmetric range would read 1e-17.
      const grain = integer ? 1 : 10 ** Math.floor(Math.log10(span) - 3);
      return clamp(Number((Math.round(value / grain) * grain).toPrecision(12)), min, max);
    },
    positionOf: (value) => clamp(Math.round((steps * (value - min)) / span), 0, steps),
  };
}

function clamp(value: number, min: number, max: number): number {
  return Math.min(max, Math.max(min, value));
}
