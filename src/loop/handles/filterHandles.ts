import { filterCoefficients } from '../../../shared/axis/loop/filterSections.ts';
import { positionRate } from '../../../shared/core/crossChecks.ts';
import { decibels } from '../../../shared/core/decibels.ts';
import { inUnit, ranged } from '../../../shared/core/format.ts';
import type { FilterNumber } from '../../../shared/core/parameters/filters.ts';
import type { NumberRow } from '../../../shared/core/parameters/row.ts';
import { PARAMETERS, type ParameterChanges, type Parameters } from '../../../shared/core/parameters/table.ts';
import { edgeOfNotch, filterGain, filterText, widthOfNotch } from './filterGain.ts';
import type { Handle, Place, Shaping } from './handle.ts';

/** What a filter is dragged to: values by the ends of their parameters' names, and how many digits they keep. */
type Dragged = Partial<
  Record<'Frequency' | 'Damping' | 'Depth' | 'Rise' | 'Ratio', readonly [number, number]>
>;

const AXES = 'Left and right move it by 1 %, with Shift by 10 %;';
const OFF = 'Delete switches it off.';

/** The handles of a filter that is on: its centre, and its width where it has one. `highest`: where the plot ends, Hz. */
export function filterHandles(p: Parameters, n: FilterNumber, highest: number): Handle[] {
  const [frequency, damping] = [p[`filter${n}Frequency`], p[`filter${n}Damping`]];
  const handle = (level: number, value: string, upAndDown: string, drag: (to: Place) => Dragged): Handle => ({
    id: `filter${n}`,
    kind: 'filter',
    glyph: String(n),
    frequency,
    level,
    label: filterText(p, n),
    value: `${ranged(frequency, 'Hz')}, ${value}`,
    help: `${AXES} up and down change its ${upAndDown}. ${OFF}`,
    drag: (to) => set(p, n, { Frequency: [to.frequency, 4], ...drag(to) }),
    remove: () => off(p, n),
  });
  switch (p[`filter${n}`]) {
    case 'off':
      return [];
    case 'notch': {
      const depth = p[`filter${n}Depth`];
      const centre = handle(decibels(depth), `depth ${inUnit(depth, '')}`, 'depth', ({ level }) => ({
        Depth: [ratio(level), 3],
      }));
      return [centre, widthHandle(p, n, highest)];
    }
    case 'peak': {
      const rise = p[`filter${n}Rise`];
      const centre = handle(decibels(rise), `gain ${inUnit(rise, '')}`, 'gain', ({ level }) => ({
        Rise: [ratio(level), 3],
      }));
      return [centre, widthHandle(p, n, highest)];
    }
    case 'low-pass':
      // ω²/(s² + 2Dωs + ω²) is 1/(2D) at its corner.
      return [
        handle(decibels(1 / (2 * damping)), `damping ${inUnit(damping, '')}`, 'damping', ({ level }) => ({
          Damping: [1 / (2 * ratio(level)), 3],
        })),
      ];
    case 'lead-lag': {
      // √r at its centre.
      const r = p[`filter${n}Ratio`];
      return [
        handle(decibels(Math.sqrt(r)), `gain ${inUnit(r, '')} above`, 'gain above', ({ level }) => ({
          Ratio: [ratio(level) ** 2, 3],
        })),
      ];
    }
    case 'coefficients':
      return [fixedHandle(p, n)];
  }
}

/** On the edge where half the power passes: above the centre, or below it where the plot ends. */
function widthHandle(p: Parameters, n: FilterNumber, highest: number): Handle {
  const [centre, width] = [p[`filter${n}Frequency`], p[`filter${n}Damping`]];
  const edge = edgeOfNotch(width);
  const frequency = centre * edge < highest ? centre * edge : centre / edge;
  return {
    id: `filter${n} width`,
    kind: 'width',
    glyph: '',
    frequency,
    level: decibels(filterGain(n, p)(frequency)),
    label: `${filterText(p, n)}, width`,
    value: inUnit(width, ''),
    help: `${AXES} away from the centre widens it.`,
    drag: (to) => {
      const distance = Math.max(to.frequency / centre, centre / to.frequency);
      return set(p, n, { Damping: [widthOfNotch(distance), 3] });
    },
    remove: () => off(p, n),
  };
}

/** Coefficients have no centre to drag: where their poles are, or at half the range of the loop where these are real. */
function fixedHandle(p: Parameters, n: FilterNumber): Handle {
  const rate = positionRate(p);
  const { a1, a2 } = filterCoefficients(p, n, rate);
  const angle = a1 * a1 < 4 * a2 ? Math.acos(-a1 / (2 * Math.sqrt(a2))) : Math.PI / 2;
  const frequency = (angle * rate) / (2 * Math.PI);
  return {
    id: `filter${n}`,
    kind: 'filter',
    glyph: String(n),
    frequency,
    level: decibels(filterGain(n, p)(frequency)),
    label: filterText(p, n),
    value: ranged(frequency, 'Hz'),
    help: `Its coefficients are typed in the panel. ${OFF}`,
    drag: null,
    remove: () => off(p, n),
  };
}

/** Values of a filter, each held in its range and rounded to so many digits. */
function set(p: Parameters, n: FilterNumber, values: Dragged): Shaping {
  const entries = Object.entries(values).map(([ending, [value, digits]]) => {
    const name = `filter${n}${ending}` as keyof Parameters;
    const { min, max, unit } = PARAMETERS[name] as NumberRow;
    const held = Number(Math.min(Math.max(value, min), max).toPrecision(digits));
    const shown = unit === '' ? inUnit(held, '') : ranged(held, unit);
    return { name, held, text: `${ending.toLowerCase()} ${shown}` };
  });
  return {
    changes: Object.fromEntries(entries.map(({ name, held }) => [name, held])) as ParameterChanges,
    text: `${filterText(p, n)}: ${entries.map(({ text }) => text).join(', ')}`,
  };
}

function off(p: Parameters, n: FilterNumber): Shaping {
  return { changes: { [`filter${n}`]: 'off' }, text: `${filterText(p, n)}: off` };
}

function ratio(level: number): number {
  return 10 ** (level / 20);
}
