import { PRESETS } from '../../../scenes/index.ts';
import { PARTS } from '../../../shared/study/parts.ts';

/**
 * What a reader of inches must not meet, after a number or as the unit of an axis; formulas of heat are in °C.
 */
const METRIC =
  /(?:\d[\d.·⁰¹²³⁴⁵⁶⁷⁸⁹⁻]* ?| in |\[)(?:mm|µm|nm|cm|m|kg|g|N|kN|MPa|mm⁴|kg·m²|kg·cm²)(?![\p{L}\d'])/gu;

/** Names of a catalogue stay as they are printed there. */
const NAMES = [PRESETS, ...Object.values(PARTS)].flatMap((named) =>
  Object.values<{ readonly title: string }>(named).map(({ title }) => title),
);

/** Every metric length, mass or force in a text, with what stands before it. */
export function metricLeft(text: string, names: readonly string[] = []): string[] {
  // The longest first: a name may begin with another.
  const longestFirst = [...names, ...NAMES].sort((a, b) => b.length - a.length);
  const plain = longestFirst.reduce((rest, name) => rest.replaceAll(name, ''), text);
  return [...plain.matchAll(METRIC)].map(({ 0: found, index }) =>
    plain.slice(Math.max(0, index - 40), index + found.length),
  );
}
