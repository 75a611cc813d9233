import { largestGrowth } from '../axis/growth.ts';
import { maxMotors, presetById } from '../core/preset.ts';
import type { Presets, Scene } from '../core/scene.ts';
import { cycleMoves } from '../motion/cycle.ts';
import type { Course } from '../protocol/timeLapse.ts';
import { ratedForce } from '../sizing/comparable.ts';
import { sizeCandidate } from '../sizing/sizeCandidate.ts';
import type { CandidateChoice } from '../study/candidate.ts';
import { candidateScene } from '../study/candidateScene.ts';
import type { Job } from '../study/job.ts';
import { chosenParts, type PartChoice } from '../study/parts.ts';
import type { JudgedCandidate } from './judgement.ts';
import { rank } from './ranking.ts';
import { shortfallsOf } from './requirements.ts';
import { costsOf } from './rows/costs.ts';
import { listed, named, sentence } from './text.ts';
import { withStates } from './withStates.ts';

/** Something that a customer can buy for a candidate. */
interface Purchase {
  readonly text: string;
  /** Of several of one kind, the first that is enough is named. */
  readonly kind?: 'ends of the screw';
  readonly job: Job;
  readonly choice: CandidateChoice;
}

/**
 * What a candidate that falls short would need to do the job: a second motor, the next size, a coolant, a finer scale, a screw that is held
 * better; and whether it would then come first. Sizing, parameters, costs and the growth at the temperatures of the day are worked out anew;
 * the day with a coolant was simulated with the rest, all else that was simulated is held.
 */
export function purchaseSentences(
  job: Job,
  candidates: readonly JudgedCandidate[],
  presets: Presets,
): string[] {
  return candidates.flatMap((candidate, place) => {
    if (shortfallsOf(job, candidate).length === 0) return [];
    const kinds = new Set<string>();
    const enough = purchasesFor(job, candidate, presets).flatMap((purchase) => {
      if (purchase.kind && kinds.has(purchase.kind)) return [];
      const bought = withPurchase(purchase, candidate, presets);
      if (shortfallsOf(purchase.job, bought).length > 0) return [];
      if (purchase.kind) kinds.add(purchase.kind);
      // Only who needs it pays for it.
      const price = costsOf(bought, purchase.job).purchase;
      const paid = { ...bought, choice: { ...bought.choice, price } };
      const { first } = rank(
        job,
        candidates.map((each, k) => (k === place ? paid : each)),
      );
      return { text: purchase.text, isFirst: first.includes(place) };
    });
    if (enough.length === 0) return [];
    const what = (isFirst: boolean) =>
      enough.filter((each) => each.isFirst === isFirst).map(({ text }) => text);
    const [leading, following] = [what(true), what(false)];
    const ways = [
      ...(leading.length > 0
        ? [`with ${listed(leading, 'or')} it meets every requirement and comes first`]
        : []),
      ...(following.length > 0
        ? [`with ${listed(following, 'or')} it meets every requirement but does not come first`]
        : []),
    ];
    return sentence(`${named(candidate)}: ${ways.join('; ')}, by calculation; simulate it to be sure`);
  });
}

/** What holds a screw better than a far end that is free, from the simplest on. */
const ENDS = [
  ['supported', 'the far end of its screw supported'],
  ['fixed', 'both ends of its screw fixed'],
  ['stretched3', 'both ends of its screw fixed and the screw stretched for 3 K'],
  ['stretched5', 'both ends of its screw fixed and the screw stretched for 5 K'],
] as const;

function purchasesFor(job: Job, { choice, scene }: JudgedCandidate, presets: Presets): Purchase[] {
  const preset = presetById(choice.preset, presets);
  const { lead } = scene.parameters;
  const withParts = (text: string, parts: PartChoice): Purchase => ({
    text,
    job,
    choice: { ...choice, parts: { ...choice.parts, ...parts } },
  });
  const { encoder, support } = chosenParts({ lead }, choice.parts);
  const ends = ENDS.slice(ENDS.findIndex(([id]) => id === support) + 1);
  const larger = Object.entries(presets)
    .filter(([, each]) => each.driveType === preset.driveType)
    .map(([id, each]) => ({ id, title: each.title, force: each.parameters.continuousForce ?? 0 }))
    .filter(({ force }) => force > ratedForce({ ...choice, motorCount: 1 }, presets))
    .sort((a, b) => a.force - b.force);
  return [
    ...(encoder === 'motor' ? [withParts('an optical scale on the table', { encoder: 'optical' })] : []),
    ...(encoder === 'interferential'
      ? []
      : [withParts('an interferential scale on the table', { encoder: 'interferential' })]),
    ...(lead > 0 ? ends : []).map(
      ([id, text]): Purchase => ({ ...withParts(text, { support: id }), kind: 'ends of the screw' }),
    ),
    ...(job.values.cooling
      ? []
      : [{ text: 'a coolant', job: { ...job, values: { ...job.values, cooling: true } }, choice }]),
    ...(choice.motorCount < maxMotors(preset)
      ? [{ text: 'another motor', job, choice: { ...choice, motorCount: choice.motorCount + 1 } }]
      : []),
    ...larger.slice(0, 1).map(({ id, title }) => ({
      text: `the next size (${title})`,
      job,
      choice: { ...choice, preset: id, own: {} },
    })),
  ];
}

/** The candidate with what is bought: its tuning and what was simulated of it are held. */
function withPurchase(
  { job, choice }: Purchase,
  candidate: JudgedCandidate,
  presets: Presets,
): JudgedCandidate {
  const scene = candidateScene(job, { ...choice, gains: null }, presets);
  const { heat } = candidate.outcome;
  const isCooled = job.values.cooling && !candidate.scene.parameters.cooling;
  const asSet = withGrowth(isCooled ? heat.switched : heat.asSet, scene);
  return {
    ...candidate,
    choice,
    scene,
    sizing: sizeCandidate(job, scene),
    outcome: { ...candidate.outcome, heat: { ...heat, asSet } },
  };
}

/** A day as it was simulated, with what its temperatures do to this axis. */
function withGrowth(course: Course, { parameters: p, moves }: Scene): Course {
  const places = cycleMoves(p, moves).flatMap(({ from, to }) => [from, to]);
  const [from, to] = places.length > 0 ? [Math.min(...places), Math.max(...places)] : [p.start, p.start];
  return withStates(course, (state) => ({ growth: largestGrowth(p, state, from, to) }));
}
