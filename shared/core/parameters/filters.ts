import { type ChoiceRow, choice, linear, log, type NumberRow } from './row.ts';

/** Numbers of the filters, as in their parameters: the force command passes through them in this order. */
export const FILTER_NUMBERS = [1, 2, 3, 4] as const;
export type FilterNumber = (typeof FILTER_NUMBERS)[number];

const FILTER_TYPES = ['off', 'notch', 'low-pass', 'lead-lag', 'peak', 'coefficients'] as const;
type FilterType = (typeof FILTER_TYPES)[number];

/** Endings of the names of the values that a type of filter has. */
const FILTER_VALUES = {
  off: [],
  notch: ['Frequency', 'Damping', 'Depth'],
  'low-pass': ['Frequency', 'Damping'],
  'lead-lag': ['Frequency', 'Ratio'],
  peak: ['Frequency', 'Damping', 'Rise'],
  coefficients: ['B0', 'B1', 'B2', 'A1', 'A2'],
} as const satisfies Record<FilterType, readonly string[]>;

/** Whether a value of a filter counts with its present type; true for what is no value of a filter. */
export function isFilterValueInUse(
  name: string,
  p: Readonly<Record<`filter${FilterNumber}`, FilterType>>,
): boolean {
  const n = FILTER_NUMBERS.find((each) => name.startsWith(`filter${each}`));
  if (n === undefined || name === `filter${n}`) return true;
  const endings: readonly string[] = FILTER_VALUES[p[`filter${n}`]];
  return endings.includes(name.slice('filter'.length + 1));
}

type FilterRows<N extends FilterNumber> = { [K in `filter${N}`]: ChoiceRow<FilterType> } & {
  [K in `filter${N}${'Frequency' | 'Damping' | 'Depth' | 'Rise' | 'Ratio' | 'B0' | 'B1' | 'B2' | 'A1' | 'A2'}`]: NumberRow;
};

/** What a filter starts from when it is switched on: Hz, and damping of its poles. */
interface Start {
  readonly frequency: number;
  readonly damping: number;
}

/** One second-order section on the force command. Which of its values count depends on its type. */
function filterSection<N extends FilterNumber>(n: N, { frequency, damping }: Start): FilterRows<N> {
  const coefficient = (name: string, range: readonly [number, number], byDefault: number) =>
    linear(
      `${name}_F${n}`,
      '',
      range,
      byDefault,
      `Coefficient ${name} of filter ${n}, at the rate of the position loop`,
    );
  return {
    [`filter${n}`]: choice(
      '',
      FILTER_TYPES,
      'off',
      `Type of filter ${n} on the force command: a notch, a low-pass, a lead or lag, a peak, or its coefficients`,
    ),
    [`filter${n}Frequency`]: log(
      `f_F${n}`,
      'Hz',
      [5, 8000],
      frequency,
      `Centre or corner frequency of filter ${n}`,
    ),
    [`filter${n}Damping`]: log(
      `D_F${n}`,
      '',
      [0.01, 2],
      damping,
      `Damping ratio of the poles of filter ${n}: sets its width`,
    ),
    [`filter${n}Depth`]: log(`d_F${n}`, '', [1e-3, 1], 0.1, `Gain at the centre of filter ${n} as a notch`),
    [`filter${n}Rise`]: log(`p_F${n}`, '', [1, 100], 2, `Gain at the centre of filter ${n} as a peak`),
    [`filter${n}Ratio`]: log(
      `r_F${n}`,
      '',
      [0.01, 100],
      3,
      `Gain of filter ${n} far above its centre as a lead-lag: above 1 it leads, below 1 it lags`,
    ),
    [`filter${n}B0`]: coefficient('b0', [-1e4, 1e4], 1),
    [`filter${n}B1`]: coefficient('b1', [-1e4, 1e4], 0),
    [`filter${n}B2`]: coefficient('b2', [-1e4, 1e4], 0),
    [`filter${n}A1`]: coefficient('a1', [-2, 2], 0),
    [`filter${n}A2`]: coefficient('a2', [-1, 1], 0),
  } as FilterRows<N>;
}

/** Four second-order sections in series, on the force command of the position loop. */
export const filterRows = {
  ...filterSection(1, { frequency: 600, damping: 0.5 }),
  ...filterSection(2, { frequency: 1200, damping: 0.5 }),
  ...filterSection(3, { frequency: 1500, damping: 0.7 }),
  ...filterSection(4, { frequency: 300, damping: 0.5 }),
};
