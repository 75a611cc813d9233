import { CHANNEL_NAMES, type ChannelName } from '../../../shared/core/channels.ts';
import { UNITS, type Unit } from '../../../shared/core/units.ts';
import type { TraceQuantity } from '../../../shared/protocol/trace.ts';

/** What a column may be written in: a unit, encoder counts, position-loop samples, or a share of the rated current. */
export type TraceUnit = Unit | 'counts' | '% of rated';

const LENGTHS: readonly TraceUnit[] = ['mm', 'm', 'µm', 'nm', 'in', 'counts'];
const CURRENTS: readonly TraceUnit[] = ['A', 'mA', '% of rated'];

/** The units a column of each quantity may be written in; the first is taken where nothing is known. */
export const TRACE_UNITS: Readonly<Record<TraceQuantity, readonly TraceUnit[]>> = {
  time: ['s', 'ms', 'µs', 'min'],
  position: LENGTHS,
  current: CURRENTS,
  currentCommand: CURRENTS,
  setpoint: LENGTHS,
  motorPosition: LENGTHS,
  tablePosition: LENGTHS,
};

/** What the title of a column says about it, as far as can be told. */
export interface ColumnGuess {
  readonly quantity: TraceQuantity | null;
  readonly unit: TraceUnit | null;
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

/** In English and in German, as recorders write them. */
const ASKED =
  '(?:set ?point|set|command(?:ed)?|cmd|reference|ref|target|demand(?:ed)?|desired|soll(?:wert|position|lage|strom)?)';
const CURRENT = '(?:current|iq|i q|(?:soll|ist|motor|phasen)?strom(?:soll|ist)?(?:wert)?)';

/** Words that tell a quantity by its title, or that it is none of ours; the first that fits counts, so the narrow ones come first. */
const TEXT: readonly [RegExp, TraceQuantity | null][] = [
  [/^(t|time|timestamp|elapsed|zeit|zeitstempel)\b/, 'time'],
  [new RegExp(`\\b${ASKED}\\b.*\\b${CURRENT}\\b|\\b${CURRENT}\\b.*\\b${ASKED}\\b`), 'currentCommand'],
  [/\bsollstrom|strom ?soll/, 'currentCommand'],
  [new RegExp(`\\b${CURRENT}\\b`), 'current'],
  [/\b(speed|velocity|error|deviation|accel\w*|force|torque|temp\w*|voltage)\b/, null],
  [/geschwindigkeit|drehzahl|schlepp|abweichung|fehler|beschleunigung|kraft|moment|spannung/, null],
  [new RegExp(`\\b${ASKED}\\b`), 'setpoint'],
  [/\bmotor\b|motor(position|lage|geber)/, 'motorPosition'],
  [/\b(table|load|carriage|slide)\b|tisch|schlitten|last(position|lage)/, 'tablePosition'],
  [/\b(pos|position|encoder|actual|x|lage|weg)\b|ist(position|lage|wert)|lage ?ist/, 'position'],
];

/** What each column of a table probably holds, judged by its title alone. */
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
function unitIn(name: string): { unit: TraceUnit | null; rms: boolean } {
  const bracketed = /[[(]\s*([^\])]*?)\s*[\])]\s*$/.exec(name);
  const text = (bracketed ?? /[\s/_]([^\s/_]+)\s*$/.exec(name))?.[1] ?? '';
  if (/^(counts?|cts?|inc|incr\w*|ink\w*)$/i.test(text)) return { unit: 'counts', rms: false };
  if (/^%/.test(text)) return { unit: '% of rated', rms: false };
  const rms = /^m?A[\s_]*(rms|eff)$/i.test(text);
  const plain = text
    .replace(/^(m?A)[\s_]*(rms|eff|pk|peak|max)$/i, '$1')
    .replace(/^[uμ](m|s)$/, 'µ$1')
    .replace(/^(sec|seconds?)$/i, 's')
    .replace(/^msec$/i, 'ms');
  return { unit: plain !== '' && Object.hasOwn(UNITS, plain) ? (plain as Unit) : null, rms };
}
