import { valueAt } from '../../../shared/core/at.ts';
import { decibels } from '../../../shared/core/decibels.ts';
import { inUnit, ranged } from '../../../shared/core/format.ts';
import type { NumberRow } from '../../../shared/core/parameters/row.ts';
import { PARAMETERS, type ParameterChanges, type Parameters } from '../../../shared/core/parameters/table.ts';
import type { Analysed } from '../panes/loopData.ts';
import {
  edgeOfNotch,
  FILTER_NAMES,
  FILTER_TEXT,
  type FilterName,
  filterGain,
  widthOfNotch,
} from './filterGain.ts';
import { notchFor } from './placeNotch.ts';
import { type Resonance, resonances } from './resonance.ts';
import { gainsForCrossover, type LoopGain, mainCrossover } from './shapeCrossover.ts';

/** A place on the magnitude plot: Hz, dB. */
export interface Place {
  readonly frequency: number;
  readonly level: number;
}

/** What a person asked for: the changes and what they do in words, or in words why it cannot be. */
export type Shaping = { readonly changes: ParameterChanges; readonly text: string } | string;

/** Something on the magnitude plot to take hold of. It keeps the loop as it was when it was made. */
export interface Handle extends Place {
  readonly id: string;
  readonly kind: 'crossover' | 'filter' | 'width' | 'resonance';
  readonly glyph: string;
  readonly label: string;
  /** What it is set to. */
  readonly value: string;
  readonly help: string;
  /** Null: a press acts, there is nothing to drag. */
  readonly drag: ((to: Place) => Shaping) | null;
  readonly press?: () => Shaping;
  readonly remove?: () => Shaping;
}

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
  const filters = FILTER_NAMES.filter((name) => p[name]).map((name) => filterGain(name, p));
  const bare = magnitude.map((value, k) =>
    filters.reduce((left, gain) => left / gain(valueAt(frequency, k)), value),
  );
  return resonances({ frequency, magnitude: bare }).filter((each) => !hasNotch(p, each.frequency));
}

/** The handles of a loop, in the order of the Tab key. */
export function handlesOf(analysed: Analysed): Handle[] {
  const { parameters: p, analysis } = analysed;
  const loop = loopGainOf(analysed);
  const crossover = mainCrossover(p, loop, analysis.figures.crossovers);
  const highest = valueAt(analysis.frequency, analysis.frequency.length - 1);
  return [
    ...(crossover === null ? [] : [crossoverHandle(p, loop, crossover)]),
    ...FILTER_NAMES.filter((name) => p[name]).flatMap((name) =>
      name === 'lowpass' ? [lowpassHandle(p)] : [notchHandle(p, name), widthHandle(p, name, highest)],
    ),
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
          help: 'Press to put a free notch on it.',
          drag: null,
          press: () => notchFor(p, each),
        };
      }),
  ];
}

function hasNotch(p: Parameters, frequency: number): boolean {
  const near = (f: number) => Math.abs(Math.log(f / frequency)) < Math.log(ON_NOTCH);
  return (p.notch1 && near(p.notch1Frequency)) || (p.notch2 && near(p.notch2Frequency));
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

const AXES = 'Left and right move it by 1 %, with Shift by 10 %;';

function notchHandle(p: Parameters, name: 'notch1' | 'notch2'): Handle {
  const [frequency, depth] = [p[`${name}Frequency`], p[`${name}Depth`]];
  return {
    id: name,
    kind: 'filter',
    glyph: name === 'notch1' ? '1' : '2',
    frequency,
    level: decibels(depth),
    label: FILTER_TEXT[name],
    value: `${ranged(frequency, 'Hz')}, depth ${inUnit(depth, '')}`,
    help: `${AXES} up and down change its depth. Delete switches it off.`,
    drag: (to) =>
      set(name, { [`${name}Frequency`]: [to.frequency, 4], [`${name}Depth`]: [ratio(to.level), 3] }),
    remove: () => off(name),
  };
}

/** On the edge where half the power passes: above the notch, or below it where the plot ends. */
function widthHandle(p: Parameters, name: 'notch1' | 'notch2', highest: number): Handle {
  const [centre, width] = [p[`${name}Frequency`], p[`${name}Width`]];
  const edge = edgeOfNotch(width);
  const frequency = centre * edge < highest ? centre * edge : centre / edge;
  return {
    id: `${name} width`,
    kind: 'width',
    glyph: '',
    frequency,
    level: decibels(filterGain(name, p)(frequency)),
    label: `${FILTER_TEXT[name]}, width`,
    value: inUnit(width, ''),
    help: `${AXES} away from the notch widens it.`,
    drag: (to) => {
      const distance = Math.max(to.frequency / centre, centre / to.frequency);
      return set(name, { [`${name}Width`]: [widthOfNotch(distance), 3] });
    },
    remove: () => off(name),
  };
}

function lowpassHandle(p: Parameters): Handle {
  const { lowpassFrequency, lowpassDamping } = p;
  return {
    id: 'lowpass',
    kind: 'filter',
    glyph: 'LP',
    frequency: lowpassFrequency,
    // ω²/(s² + 2Dωs + ω²) is 1/(2D) at its corner.
    level: decibels(1 / (2 * lowpassDamping)),
    label: FILTER_TEXT.lowpass,
    value: `${ranged(lowpassFrequency, 'Hz')}, damping ${inUnit(lowpassDamping, '')}`,
    help: `${AXES} up and down change its damping. Delete switches it off.`,
    drag: (to) =>
      set('lowpass', {
        lowpassFrequency: [to.frequency, 4],
        lowpassDamping: [1 / (2 * ratio(to.level)), 3],
      }),
    remove: () => off('lowpass'),
  };
}

/** Values of a filter, each held in its range and rounded to so many digits. */
function set(
  name: FilterName,
  values: Readonly<Record<string, readonly [value: number, digits: number]>>,
): Shaping {
  const entries = Object.entries(values).map(([entry, [value, digits]]) => {
    const { min, max } = PARAMETERS[entry as keyof typeof PARAMETERS] as NumberRow;
    return [entry, Number(Math.min(Math.max(value, min), max).toPrecision(digits))] as const;
  });
  const changes = Object.fromEntries(entries) as ParameterChanges;
  const parts = entries.map(([entry, value]) => {
    const { unit } = PARAMETERS[entry as keyof typeof PARAMETERS] as NumberRow;
    return `${entry.slice(name.length).toLowerCase()} ${unit === '' ? inUnit(value, '') : ranged(value, unit)}`;
  });
  return { changes, text: `${FILTER_TEXT[name]}: ${parts.join(', ')}` };
}

function off(name: FilterName): Shaping {
  return { changes: { [name]: false }, text: `${FILTER_TEXT[name]} off` };
}

function ratio(level: number): number {
  return 10 ** (level / 20);
}

function levelAt({ frequency, magnitude }: LoopGain, at: number): number {
  return decibels(valueAt(magnitude, frequency.indexOf(at)));
}
