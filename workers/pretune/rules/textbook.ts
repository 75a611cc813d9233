import { feedbackWeights } from '../../../shared/axis/loop/feedback.ts';
import { gainChanges } from '../../../shared/axis/loop/loopGains.ts';
import { startGains } from '../../../shared/axis/loop/startGains.ts';
import { rounded } from '../../../shared/axis/loop/tunedValue.ts';
import { loadSideMass, motorSideMass, movedMass } from '../../../shared/core/movedMass.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import { LoopFamily } from '../loopFamily.ts';
import { highestCrossover, isStable, type LoopLimit, tightness } from '../loopLimit.ts';
import { plantResponse } from '../plantResponse.ts';
import { type Filters, filterChanges, filterDelay, filtersOf, NO_FILTERS } from '../shape.ts';
import { currentBandwidth } from './magnitudeOptimum.ts';
import { symmetricalOptimum } from './symmetricalOptimum.ts';

/** A tuning by rule: only the crossover is left to choose. */
interface Rule {
  readonly name: string;
  /** @param crossover rad/s */
  readonly changes: (p: Parameters, filters: Filters, crossover: number) => ParameterChanges;
}

/**
 * Position loop at a third of the speed loop's crossover, and the speed filter at eight times it:
 * common practice, no source.
 */
const POSITION_SHARE = 1 / 3;
const FILTER_RATIO = 8;

/**
 * Careful textbook tuning: every delay counted that a textbook counts, and the better of its rules
 * for each job. The one that mostly proves best comes before the last, whose run then ends early.
 */
const TEXTBOOK_RULES: readonly Rule[] = [
  { name: 'lead ratios', changes: (p, _filters, crossover) => startGains(p, crossover / (2 * Math.PI)) },
  {
    name: 'symmetrical optimum, speed filter of one sample',
    changes: (p, filters, crossover) => cascade(p, filters, crossover, p.positionDivider / p.currentRate),
  },
  {
    name: 'symmetrical optimum, speed filter at eight times the crossover',
    changes: (p, filters, crossover) => cascade(p, filters, crossover, 1 / (FILTER_RATIO * crossover)),
  },
];

/**
 * The speed loop by the symmetrical optimum, with every small delay counted: current loop, hold,
 * difference, speed filter, notches. Its width a follows from the crossover 1/(aT). Feedforward is
 * that of the start gains: mass and viscous drag.
 */
function cascade(
  p: Parameters,
  filters: Filters,
  crossover: number,
  derivativeTime: number,
): ParameterChanges {
  const delay = loopDelay(p, filters) + derivativeTime;
  const mass = movedMass(p);
  const { gain, resetTime } = symmetricalOptimum(mass, delay, 1 / (crossover * delay));
  return {
    ...startGains(p, crossover / (2 * Math.PI)),
    ...gainChanges(p.controller, {
      velocityGain: gain,
      resetTime,
      positionGain: POSITION_SHARE * crossover,
    }),
    derivativeTime: rounded('derivativeTime', derivativeTime),
  };
}

/**
 * Small delays of the speed loop without its filter, s: current loop, half a sample each for hold
 * and difference, filters.
 */
function loopDelay(p: Parameters, filters: Filters): number {
  return 1 / (2 * Math.PI * p.currentBandwidth) + p.positionDivider / p.currentRate + filterDelay(filters);
}

/** A standard notch: common practice, no source. */
const STANDARD_NOTCH = { width: 0.5, depth: 0.1 };

/**
 * Filters that a textbook would use: none, those of the scene, or one notch on the resonance of the
 * datasheet.
 */
function textbookFilters(p: Parameters): { readonly name: string; readonly filters: Filters }[] {
  const own = filtersOf(p);
  const choices = [{ name: '', filters: NO_FILTERS }];
  if (own.notches.length > 0 || own.lowpass) choices.push({ name: ', filters as they are', filters: own });
  const [m1, m2] = [motorSideMass(p), loadSideMass(p)];
  const frequency = Math.sqrt(p.linkStiffness * (1 / m1 + 1 / m2)) / (2 * Math.PI);
  if (frequency < p.currentRate / p.positionDivider / 2)
    choices.push({
      name: ', notch on the resonance',
      filters: { notches: [{ frequency, ...STANDARD_NOTCH }], lowpass: null },
    });
  return choices;
}

/** Range of crossovers, Hz. */
const CROSSOVERS = [1, 800] as const;
const POINTS = 300;

interface TextbookTuning {
  readonly name: string;
  readonly changes: ParameterChanges;
}

/** For each rule the tuning at the limit, with the filters that allow the highest crossover; worked out as they are asked for. */
export function* textbookTunings(given: Parameters, limit: LoopLimit): Generator<TextbookTuning> {
  const p: Parameters = {
    ...given,
    currentBandwidth: rounded('currentBandwidth', currentBandwidth(given.currentRate)),
    observer: false,
  };
  const plant = plantResponse(p, POINTS);
  for (const rule of TEXTBOOK_RULES) {
    let best: (TextbookTuning & { readonly crossover: number }) | null = null;
    for (const { name, filters } of textbookFilters(p)) {
      const changesAt = (crossover: number): ParameterChanges => ({
        currentBandwidth: p.currentBandwidth,
        ...(given.observer && { observer: false }),
        ...filterChanges(filters),
        ...rule.changes(p, filters, crossover),
      });
      const crossover = highestCrossover(
        [2 * Math.PI * CROSSOVERS[0], 2 * Math.PI * CROSSOVERS[1]],
        (at) => at > (best?.crossover ?? 0),
        (at) => {
          const parameters = { ...p, ...changesAt(at) };
          return tightness(new LoopFamily(parameters, plant), feedbackWeights(parameters), limit) <= 1;
        },
        (at) => isStable({ ...p, ...changesAt(at) }, plant),
      );
      if (crossover !== null && crossover > (best?.crossover ?? 0))
        best = { name: rule.name + name, changes: changesAt(crossover), crossover };
    }
    if (best !== null) yield { name: best.name, changes: best.changes };
  }
}
