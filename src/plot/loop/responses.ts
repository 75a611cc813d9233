import { decibels } from '../../../shared/core/decibels.ts';
import { UNITS } from '../../../shared/core/units.ts';
import type { LoopAnalysis, MeasuredLoop, Response } from '../../../shared/protocol/analysis.ts';
import type { Pen } from '../pens.ts';
import type { LevelLimits } from './levelScale.ts';

/** One response as the plots draw it. */
export interface ResponseSpec {
  readonly name: string;
  readonly title: string;
  readonly pen: Pen;
  of(analysis: LoopAnalysis): Response;
  measured?(loop: MeasuredLoop): Response;
}

export interface BodeSpec {
  readonly title: string;
  readonly responses: readonly ResponseSpec[];
  /** How the upper scale counts a magnitude: dB, or powers of ten of a unit. */
  readonly magnitude: MagnitudeSpec;
  readonly phase: LevelLimits;
  /** Only the open loop shows its margins, filters and handles. */
  readonly isShaped: boolean;
}

interface MagnitudeSpec {
  readonly unit: string;
  readonly limits: LevelLimits;
  /** A level that means something, drawn stronger. */
  readonly reference: number | null;
  levelOf(magnitude: number): number;
  textOf(level: number): string;
}

export const degrees = (radians: number): number => (radians * 180) / Math.PI;

const numberText = (value: number): string => String(Number(value.toPrecision(6))).replace('-', '−');

/** Text of a level of phase. */
export const degreesText = (level: number): string => `${numberText(level)}°`;

const DECIBELS = (min: LevelLimits['min'], max: LevelLimits['max']): MagnitudeSpec => ({
  unit: 'dB',
  limits: { steps: [10, 20, 40, 80], min, max },
  reference: 0,
  levelOf: decibels,
  textOf: numberText,
});

/** Powers of ten of N/µm. */
const NEWTONS_PER_MICROMETRE: MagnitudeSpec = {
  unit: 'N/µm',
  limits: { steps: [1, 2, 3], min: [0, 2], max: [-4, 5] },
  reference: null,
  levelOf: (stiffness) => Math.log10(stiffness / UNITS['N/µm'].factor),
  textOf: (level) => (level >= 3 ? `${10 ** (level - 3)}k` : String(Number((10 ** level).toPrecision(1)))),
};

const PHASE = (min: LevelLimits['min'], max: LevelLimits['max']): LevelLimits => ({
  steps: [45, 90, 180, 360],
  min,
  max,
});

/** What is drawn over frequency. L is the loop cut at the current command. */
export const BODE = {
  open: {
    title: 'Open loop',
    responses: [
      {
        name: 'L',
        title: 'Open loop L, cut at the current command',
        pen: { colour: 'ink', width: 2 },
        of: ({ openLoop }) => openLoop,
        measured: ({ openLoop }) => openLoop,
      },
    ],
    magnitude: DECIBELS([-40, 40], [-80, 60]),
    phase: PHASE([-270, -90], [-450, 90]),
    isShaped: true,
  },
  closed: {
    title: 'S and T',
    responses: [
      {
        name: 'S',
        title: 'Sensitivity S = 1/(1 + L): the share of a disturbance that remains',
        pen: { colour: 'error', dash: 'dashed', width: 2 },
        of: ({ sensitivity }) => sensitivity,
        measured: ({ sensitivity }) => sensitivity,
      },
      {
        name: 'T',
        title: 'Closed loop T = L/(1 + L)',
        pen: { colour: 'position', width: 2 },
        of: ({ closedLoop }) => closedLoop,
      },
    ],
    magnitude: DECIBELS([-30, 10], [-60, 40]),
    phase: PHASE([-180, 90], [-450, 270]),
    isShaped: false,
  },
  stiffness: {
    title: 'Stiffness',
    responses: [
      {
        name: 'stiffness',
        title: 'Disturbance stiffness: force on the table over its deflection',
        pen: { colour: 'force', width: 2 },
        of: ({ stiffness }) => stiffness,
      },
    ],
    magnitude: NEWTONS_PER_MICROMETRE,
    phase: PHASE([-90, 180], [-450, 360]),
    isShaped: false,
  },
} as const satisfies Record<string, BodeSpec>;

export type BodeName = keyof typeof BODE;
