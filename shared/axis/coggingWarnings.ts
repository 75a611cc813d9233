import { changedSinceLearned } from '../core/coggingTable.ts';
import { parameterNamed as named } from '../core/parameters/labels.ts';
import type { Scene } from '../core/scene.ts';
import { type Sentence, sentence } from '../core/sentence.ts';

/** Why the cogging compensation that is switched on does not do what it should. */
export function coggingWarnings({
  parameters: p,
  coggingTable,
}: Pick<Scene, 'parameters' | 'coggingTable'>): Sentence[] {
  if (!p.coggingCompensation) return [];
  if (!coggingTable) {
    return [
      sentence`${named('coggingCompensation')} is on, but no table has been learned: it adds no force. Learn the cogging
        table first.`,
    ];
  }
  const [first, ...others] = changedSinceLearned(coggingTable, p);
  if (!first) return [];
  const more = others.length === 0 ? '' : ` and ${others.length} more`;
  return [
    sentence`The cogging table no longer belongs to this machine: ${named(first)}${more} changed since it was learned.
      Learn the cogging table again, or switch ${named('coggingCompensation')} off.`,
  ];
}
