import { CHANNEL_NAMES, type ChannelName } from '../../../shared/core/channels.ts';
import { UNITS, type Unit } from '../../../shared/core/units.ts';
import type { TraceQuantity } from '../../../shared/protocol/trace.ts';

/** The units a column of each quantity may be written in; the first is taken where nothing is known. */
export const TRACE_UNITS: Readonly<Record<TraceQuantity, readonly Unit[]>> = {
  time: ['s', 'ms', 'µs', 'min'],
  position: ['mm', 'm', 'µm', 'nm', 'in'],
  current: ['A'],
  currentCommand: ['A'],
  setpoint: ['mm', 'm', 'µm', 'nm', 'in'],
  motorPosition: ['mm', 'm', 'µm', 'nm', 'in'],
  tablePosition: ['mm', 'm', 'µm', 'nm', 'in'],
};

/** What the title of a column says about it, as far as can be told. */
export interface ColumnGuess {
  readonly quantity: TraceQuantity | null;
  readonly unit: Unit | null;
  /** The current is rms, not an amplitude. */
  readonly rms: boolean;
}

/** Our own export: the channels it is made of, in SI. */
const OWN: Partial<Record<ChannelName, TraceQuantity>> = {
  time: 'time',
  encoderPosition: 'position',
  forceCurrent: 'current',
  currentCommand: 'currentCommand',
  setpoint: 'setpoint',
  motorPosition: 'motorPosition',
  tablePosition: 'tablePosition',
};

const ASKED = '(?:set ?point|set|command(?:ed)?|cmd|reference|ref|target|demand(?:ed)?|desired)';
const CURRENT = '(?:current|iq|i q)';

/** Words that tell a quantity by its title, or that it is none of ours; the first that fits counts, so the narrow ones come first. */
const TEXT: readonly [RegExp, TraceQuantity | null][] = [
  [/^(t|time|timestamp|elapsed)\b/, 'time'],
  [new RegExp(`\\b${ASKED}\\b.*\\b${CURRENT}\\b|\\b${CURRENT}\\b.*\\b${ASKED}\\b`), 'currentCommand'],
  [new RegExp(`\\b${CURRENT}\\b`), 'current'],
  [/\b(speed|velocity|error|deviation|accel\w*|force|torque|temp\w*|voltage)\b/, null],
  [new RegExp(`\\b${ASKED}\\b`), 'setpoint'],
  [/\bmotor\b/, 'motorPosition'],
  [/\b(table|load|carriage|slide)\b/, 'tablePosition'],
  [/\b(pos|position|encoder|actual|x)\b/, 'position'],
];

/** Guesses for every column of a table, from the titles alone. */
export function guessColumns(names: readonly string[]): ColumnGuess[] {
  const own = names.length === CHANNEL_NAMES.length && names.every((name, k) => name === CHANNEL_NAMES[k]);
  if (own) return CHANNEL_NAMES.map(guessOwn);
  return names.map(guess);
}

function guessOwn(name: ChannelName): ColumnGuess {
  const quantity = OWN[name] ?? null;
  const unit =
    quantity === 'time' ? 's' : quantity === 'current' || quantity === 'currentCommand' ? 'A' : 'm';
  return { quantity, unit: quantity && unit, rms: false };
}

function guess(name: string): ColumnGuess {
  const label = textOf(name);
  const quantity = TEXT.find(([pattern]) => pattern.test(label))?.[1] ?? null;
  const { unit, rms } = unitIn(name);
  const fits = quantity === null || unit === null || TRACE_UNITS[quantity].includes(unit);
  return fits ? { quantity, unit, rms } : { quantity: null, unit, rms };
}

/** 'motorPosition_mm [mm]' as 'motor position mm'. */
function textOf(name: string): string {
  return name
    .replace(/[[(].*$/, '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replace(/[^A-Za-z]+/g, ' ')
    .trim()
    .toLowerCase();
}

/** The unit at the end of a title: in brackets, or after a blank, a stroke or an underscore. */
function unitIn(name: string): { unit: Unit | null; rms: boolean } {
  const bracketed = /[[(]\s*([^\])]*?)\s*[\])]\s*$/.exec(name);
  const text = (bracketed ?? /[\s/_]([^\s/_]+)\s*$/.exec(name))?.[1] ?? '';
  const rms = /^A[\s_]*(rms|eff)$/i.test(text);
  const plain = text
    .replace(/^A[\s_]*(rms|eff|pk|peak)$/i, 'A')
    .replace(/^[uμ](m|s)$/, 'µ$1')
    .replace(/^(sec|seconds?)$/i, 's')
    .replace(/^msec$/i, 'ms');
  return { unit: plain !== '' && Object.hasOwn(UNITS, plain) ? (plain as Unit) : null, rms };
}
