import { filtersOn } from '../../../shared/axis/loop/filterSections.ts';
import { valueAt } from '../../../shared/core/at.ts';
import { decibels } from '../../../shared/core/decibels.ts';
import { inUnit, ranged } from '../../../shared/core/format.ts';
import { FILTER_NUMBERS } from '../../../shared/core/parameters/filters.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { Analysed } from '../panes/loopData.ts';
import { filterGain } from './filterGain.ts';
import { filterHandles } from './filterHandles.ts';
import type { Handle } from './handle.ts';
import { notchFor } from './placeNotch.ts';
import { type Resonance, resonances } from './resonance.ts';
import { gainsForCrossover, type LoopGain } from './shapeCrossover.ts';

/** Resonances below this share of the crossover have the loop's own gain against them. */
const BELOW_CROSSOVER = 0.5;
const MAX_RESONANCES = 3;
/** A notch this close to a resonance, as a ratio, is meant for it. */
const ON_NOTCH = 1.15;

function loopGainOf({ analysis }: Analysed): LoopGain {
  return { frequency: analysis.frequency, magnitude: analysis.openLoop.magnitude };
}

/** The resonances of the axis that have no notch yet: of L without its filters, whose shoulders are no peaks. The highest first. */
export function bareResonances(analysed: Analysed): Resonance[] {
  const { parameters: p } = analysed;
  const { frequency, magnitude } = loopGainOf(analysed);
  const filters = filtersOn(p).map((n) => filterGain(n, p));
  const bare = magnitude.map((value, k) =>
    filters.reduce((left, gain) => left / gain(valueAt(frequency, k)), value),
  );
  return resonances({ frequency, magnitude: bare }).filter((each) => !hasNotch(p, each.frequency));
}

/** The handles of a loop, in the order of the Tab key. */
export function handlesOf(analysed: Analysed): Handle[] {
  const { parameters: p, analysis } = analysed;
  const loop = loopGainOf(analysed);
  const { crossover } = analysis.figures;
  const highest = valueAt(analysis.frequency, analysis.frequency.length - 1);
  return [
    ...(crossover === null ? [] : [crossoverHandle(p, loop, crossover)]),
    ...filtersOn(p).flatMap((n) => filterHandles(p, n, highest)),
    ...bareResonances(analysed)
      .filter(({ frequency }) => frequency > BELOW_CROSSOVER * (crossover ?? 0))
      .slice(0, MAX_RESONANCES)
      .map((each, k): Handle => {
        const { frequency, height } = each;
        return {
          id: `resonance ${k}`,
          kind: 'resonance',
          glyph: '',
          frequency,
          level: levelAt(loop, frequency),
          label: `Resonance at ${ranged(frequency, 'Hz')}: put a notch on it`,
          value: `${inUnit(decibels(height), '', 2)} dB above its surroundings`,
          help: 'Press to put a notch on it.',
          drag: null,
          press: () => notchFor(p, each),
        };
      }),
  ];
}

function hasNotch(p: Parameters, frequency: number): boolean {
  const near = (f: number) => Math.abs(Math.log(f / frequency)) < Math.log(ON_NOTCH);
  return FILTER_NUMBERS.some((n) => p[`filter${n}`] === 'notch' && near(p[`filter${n}Frequency`]));
}

function crossoverHandle(p: Parameters, loop: LoopGain, crossover: number): Handle {
  return {
    id: 'crossover',
    kind: 'crossover',
    glyph: '',
    frequency: crossover,
    level: 0,
    label: 'Crossover',
    value: ranged(crossover, 'Hz'),
    help: 'Left and right move it by 1 %, with Shift by 10 %. All gains and the speed filter move with it.',
    drag: ({ frequency }) => {
      const gains = gainsForCrossover(p, loop, frequency);
      if (gains === null) return `No gains within range give a crossover at ${ranged(frequency, 'Hz')}.`;
      return { changes: gains, text: `Crossover to ${ranged(frequency, 'Hz')}` };
    },
  };
}

function levelAt({ frequency, magnitude }: LoopGain, at: number): number {
  return decibels(valueAt(magnitude, frequency.indexOf(at)));
}
