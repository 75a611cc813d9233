import type { ParameterChanges, Parameters } from '../../core/parameters/table.ts';
import { gainsInStructure } from './loopGains.ts';

/** A structure of the position loop as a drive may have it. */
export interface LoopStructure {
  readonly name: string;
  readonly choice: Pick<Parameters, 'controller' | 'observer' | 'speedSource'>;
}

const ONE_ENCODER = { observer: false, speedSource: 'position encoder' } as const;

const PLAIN: readonly LoopStructure[] = [
  { name: 'PID on position', choice: { controller: 'PID', ...ONE_ENCODER } },
  { name: 'Cascade', choice: { controller: 'cascade', ...ONE_ENCODER } },
  { name: 'Cascade with observer', choice: { controller: 'cascade', ...ONE_ENCODER, observer: true } },
];
const DUAL: LoopStructure = {
  name: 'Dual loop',
  choice: { controller: 'cascade', observer: false, speedSource: 'motor encoder' },
};

/** The structures that an axis can have; a dual loop needs its position encoder on the table. */
export function structuresOf({ encoderSide }: Pick<Parameters, 'encoderSide'>): LoopStructure[] {
  return encoderSide === 'load' ? [...PLAIN, DUAL] : [...PLAIN];
}

/** What gives an axis a structure: its choice, with the present gains taken over. */
export function structureChanges(p: Parameters, { choice }: LoopStructure): ParameterChanges {
  return { ...gainsInStructure(p, choice.controller), ...choice };
}

/** The structure of an axis by its name; what none of the list has in words. */
export function structureName(p: Pick<Parameters, 'controller' | 'observer' | 'speedSource'>): string {
  const base = p.speedSource === 'motor encoder' ? `Dual loop${p.controller === 'PID' ? ', PID' : ''}` : null;
  const name = base ?? (p.controller === 'PID' ? 'PID on position' : 'Cascade');
  return p.observer ? `${name} with observer` : name;
}
