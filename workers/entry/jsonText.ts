import { AS_WRITTEN, type Sentence, sentenceText } from '../../shared/core/sentence.ts';
import { tripText } from '../../shared/figures/tripText.ts';
import type { Trip } from '../../shared/protocol/axis.ts';

/** Results as a JSON file: numbers unrounded; what is a sentence is written as one, and a trip says why. */
export function jsonText(results: object): string {
  return `${JSON.stringify(results, worded, 2)}\n`;
}

function worded(key: string, value: unknown): unknown {
  if (key === 'trip' && value !== null) return { ...(value as Trip), message: tripText(value as Trip, 'SI') };
  if (key === 'reasons') return (value as (string | Sentence)[]).map(asText);
  return value;
}

function asText(reason: string | Sentence): string {
  return typeof reason === 'string' ? reason : sentenceText(reason, AS_WRITTEN);
}
