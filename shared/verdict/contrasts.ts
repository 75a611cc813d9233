import type { Job } from '../study/job.ts';
import type { JudgedCandidate } from './judgement.ts';
import { type FigureRow, isBetter, type Speech, tie } from './rows/row.ts';
import { FIGURE_ROWS } from './rows/rows.ts';

/** A row that is worth a sentence. */
type SpokenRow = FigureRow & { readonly speech: Speech };

export const SPOKEN_ROWS: readonly SpokenRow[] = FIGURE_ROWS.filter(
  (row): row is SpokenRow => row.speech !== null,
);

/** Beyond this a larger factor tells hardly more. */
const LARGEST = 20;
const HARDLY = 1e-3;

/** How one candidate stands to another in a row where the two can be told apart. */
export interface Contrast {
  readonly row: SpokenRow;
  readonly own: number;
  readonly other: number;
  readonly better: boolean;
  /** Own size over the other's, nothing counted as no less than what the row can tell apart. */
  readonly factor: number;
  /** How much it tells: the factor on a log scale, weighted. */
  readonly score: number;
}

export function contrasts(job: Job, candidate: JudgedCandidate, rival: JudgedCandidate): Contrast[] {
  return SPOKEN_ROWS.flatMap((row) => {
    const [own, other] = [row.of(candidate, job), row.of(rival, job)];
    if (own === null || other === null || tie(row, own, other)) return [];
    const factor = size(row, own, candidate) / size(row, other, rival);
    const far = Math.abs(Math.log(factor));
    const score = matter(row, job, candidate, rival) * (Math.min(far, Math.log(LARGEST)) + HARDLY * far);
    return { row, own, other, better: isBetter(row, own, other), factor, score };
  });
}

/** Weight of the row, less where even the larger of the two is small beside what the job minds. */
function matter(row: SpokenRow, job: Job, candidate: JudgedCandidate, rival: JudgedCandidate): number {
  const { weight, mattersFrom } = row.speech;
  if (!mattersFrom) return weight;
  const larger = Math.max(...[candidate, rival].map((each) => size(row, row.of(each, job) ?? 0, each)));
  return weight * Math.min(larger / mattersFrom(job), 1);
}

/** A warmth counts from the room's. */
function size(row: SpokenRow, value: number, { scene }: JudgedCandidate): number {
  const above = row.speech.measure === 'warmth' ? value - scene.parameters.ambient : value;
  return Math.max(above, row.resolution.absolute, Number.MIN_VALUE);
}
