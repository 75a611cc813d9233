import { at } from '../../../shared/core/at.ts';
import type { NumberRow, Row } from '../../../shared/core/parameters/row.ts';

/** A legal value of a row, its ends and zero more often than chance has it. */
export function drawValue(row: Row, random: () => number) {
  if (row.kind === 'switch') return random() < 0.5;
  if (row.kind === 'choice') return at(row.options, Math.floor(random() * row.options.length));
  return drawNumber(row, random);
}

export function drawNumber({ min, max, scale, zero, integer }: NumberRow, random: () => number): number {
  const draw = random();
  if (draw < 0.1) return zero ? 0 : min;
  if (draw < 0.2) return max;
  const value = scale === 'log' ? min * (max / min) ** random() : min + random() * (max - min);
  return Math.min(Math.max(integer ? Math.round(value) : value, min), max);
}
