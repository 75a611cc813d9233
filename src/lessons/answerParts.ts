import { shortest } from '../../shared/core/format.ts';
import { claimHolds, claimText, type Measured } from '../../shared/lesson/claim.ts';
import type { Claim, Lesson, LessonStep, Measure } from '../../shared/lesson/lesson.ts';
import { measureLabel, measureText } from '../../shared/lesson/measureText.ts';

/** What was predicted, against what the run shows; empty where nothing was asked or predicted. */
export function predictionText({ question }: LessonStep, chosen: number | null): string {
  if (!question || chosen === null) return '';
  const prediction = question.answers[chosen] ?? '';
  return chosen === question.right
    ? `As predicted: ${prediction}`
    : `Predicted: ${prediction} It turned out: ${question.answers[question.right] ?? ''}`;
}

/** Above the figures, with the part of the run that they were read in, where it is the same for all that have one. */
export function measuredHead({ measures }: LessonStep): string {
  const spans = measures.flatMap(({ source }) =>
    source.kind === 'channel' ? [`from ${source.from} to ${shortest(source.to, 's')}`] : [],
  );
  const [span] = spans;
  return ['Measured just now', ...(span && spans.every((each) => each === span) ? [span] : [])].join(', ');
}

/** The figures just measured that bear the answer out, or what is still missing for it. */
export function claimLines(lesson: Lesson, step: LessonStep, measured: Measured): string[] {
  const measures = lesson.steps.flatMap((each) => each.measures);
  const lines = step.answer.claims.map((claim) => claimLine(lesson, claim, measures, measured));
  const quoted = new Set(step.answer.claims.flatMap(({ measure, than }) => [measure, than]));
  const others = step.measures
    .filter(({ id }) => !quoted.has(id))
    .map((measure) => `${measureLabel(measure)}: ${measureText(measure, measured.get(measure.id) ?? null)}.`);
  // Two claims on the same figures, above one limit and below another, are told by the same line.
  return [...new Set([...lines, ...others])];
}

function claimLine(lesson: Lesson, claim: Claim, measures: readonly Measure[], measured: Measured): string {
  const holds = claimHolds(claim, measured);
  if (holds === null) return `Run step ${missingStep(lesson, claim, measured)} first, then compare.`;
  const text = claimText(claim, measures, measured);
  return holds ? text : `${text} This run does not bear the answer out.`;
}

/** The number of the step whose figure has not been measured. */
function missingStep(lesson: Lesson, { measure, than }: Claim, measured: Measured): number {
  const isMissing = ({ id }: Measure) => (id === measure || id === than) && !measured.has(id);
  return lesson.steps.findIndex((step) => step.measures.some(isMissing)) + 1;
}
