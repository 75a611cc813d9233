import type { Presets } from '../core/scene.ts';
import { sizeCandidate } from '../sizing/sizeCandidate.ts';
import { candidateScene } from '../study/candidateScene.ts';
import type { Job } from '../study/job.ts';
import type { JudgedCandidate } from './judgement.ts';
import { firstText, rank, type Standing } from './ranking.ts';
import { listed, sentence } from './text.ts';

/** An input that is never known exactly, and what it may turn out to be. Usual tolerances; common practice, no source. */
interface Uncertain {
  readonly text: string;
  readonly job?: (values: Job['values']) => Partial<Job['values']>;
  readonly axis?: (
    p: JudgedCandidate['scene']['parameters'],
  ) => Partial<JudgedCandidate['scene']['parameters']>;
}

const UNCERTAIN: readonly Uncertain[] = [
  {
    text: 'a load 10 % heavier',
    job: ({ payload, tableMass }) => ({ payload: 1.1 * payload, tableMass: 1.1 * tableMass }),
  },
  {
    text: 'motors 5 % weaker',
    axis: ({ forceConstant, torqueConstant }) => ({
      forceConstant: 0.95 * forceConstant,
      torqueConstant: 0.95 * torqueConstant,
    }),
  },
  {
    text: 'twice the friction',
    axis: ({ frictionCoefficient, sealFriction, viscous, nutDrag }) => ({
      frictionCoefficient: 2 * frictionCoefficient,
      sealFriction: 2 * sealFriction,
      viscous: 2 * viscous,
      nutDrag: 2 * nutDrag,
    }),
  },
  { text: 'a room 10 K warmer', job: ({ ambient }) => ({ ambient: ambient + 10 }) },
  { text: 'a bus 10 % lower', job: ({ busVoltage }) => ({ busVoltage: 0.9 * busVoltage }) },
];

/** Whether the choice holds when inputs turn out worse than stated, all at once and one by one, by calculation; empty without a choice. */
export function robustnessSentence(
  job: Job,
  candidates: readonly JudgedCandidate[],
  presets: Presets,
): string {
  const before = rank(job, candidates).first;
  if (before.length === 0) return '';
  const holds = ({ first }: Standing) => first.join() === before.join();
  const texts = UNCERTAIN.map(({ text }) => text);
  if (holds(worse(job, candidates, presets, UNCERTAIN)))
    return `The choice holds with ${listed(texts)}, all at once, by calculation; simulated figures are held.`;
  const alone = UNCERTAIN.map((each) => ({ ...each, standing: worse(job, candidates, presets, [each]) }));
  const fragile = alone.filter(({ standing }) => !holds(standing));
  if (fragile.length === 0)
    return `The choice holds with ${listed(texts, 'or')}, each by itself, by calculation, but not with all at once.`;
  const then = fragile.map(({ text, standing }) => `${text} ${firstText(candidates, standing)}`);
  return sentence(
    `The choice depends on what is not known exactly: with ${then.join('; with ')}, by calculation`,
  );
}

/** The ranking with inputs worse than stated: sizing anew, what was simulated held. */
function worse(
  job: Job,
  candidates: readonly JudgedCandidate[],
  presets: Presets,
  inputs: readonly Uncertain[],
): Standing {
  const values = { ...job.values };
  for (const { job: change } of inputs) Object.assign(values, change?.(values));
  const other = { ...job, values };
  return rank(
    other,
    candidates.map((candidate) => {
      const scene = candidateScene(other, { ...candidate.choice, gains: null }, presets);
      const parameters = { ...scene.parameters };
      for (const { axis } of inputs) Object.assign(parameters, axis?.(parameters));
      return { ...candidate, sizing: sizeCandidate(other, { ...scene, parameters }) };
    }),
  );
}
