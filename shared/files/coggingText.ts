import { type CoggingTable, TABLE_MACHINE } from '../core/coggingTable.ts';
import { parameterRow } from '../core/parameters/table.ts';
import type { Entries } from './jsonFile.ts';
import { parseNumber, parseValue } from './linkText.ts';

/** Characters that stand in an address as they are. */
const PART = '~';
const ENTRY = '_';

/** A cogging table in a link: place and speed, forces, machine, each a list. */
export function writeCoggingTable({ from, spacing, scanSpeed, forces, machine }: CoggingTable): string {
  const parts = [[from, spacing, scanSpeed], forces, TABLE_MACHINE.map((name) => machine[name])];
  return parts.map((part) => part.join(ENTRY)).join(PART);
}

/** The table of a link, still unchecked; undefined where the link has none. */
export function parseCoggingTable(text: string | undefined): Entries | undefined {
  if (text === undefined) return undefined;
  const [place = [], forces = [], machine = []] = text.split(PART).map((part) => part.split(ENTRY));
  const [from, spacing, scanSpeed] = place.map(parseNumber);
  return {
    from,
    spacing,
    scanSpeed,
    forces: forces.map(parseNumber),
    machine: Object.fromEntries(
      TABLE_MACHINE.map((name, index) => [name, parseValue(machine[index] ?? '', parameterRow(name))]),
    ),
  };
}
