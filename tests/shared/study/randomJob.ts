import { present } from '../../../shared/core/at.ts';
import { moveLimits } from '../../../shared/motion/moveLimits.ts';
import { moveTimeRange } from '../../../shared/motion/moveTimes.ts';
import { checkJob } from '../../../shared/study/checkJob.ts';
import {
  defaultJobValues,
  JOB_ENTRIES,
  type Job,
  type JobValues,
  jobRow,
} from '../../../shared/study/job.ts';
import { drawValue } from '../core/drawValue.ts';

/** A legal job whose values are drawn from all over their ranges; seeded by the random numbers. */
export function randomJob(random: () => number): Job {
  let job: Job = {
    title: `Job ${Math.floor(random() * 1e6)}: 5 ± 1 µm & "more" = ä 磁 😀 #?/+%;,`,
    values: defaultJobValues(),
    moves: [],
  };
  const tryOut = (values: JobValues, moves = job.moves) => {
    const attempt = { ...job, values, moves };
    if (checkJob(attempt).job) job = attempt;
  };
  // In the order of chance, so that no value keeps another from its range for ever.
  const names = JOB_ENTRIES.map((name) => [random(), name] as const).sort(([a], [b]) => a - b);
  for (const [, name] of names) {
    const values = { ...job.values, [name]: drawValue(jobRow(name), random) };
    const { min, max } = moveTimeRange(values.stroke);
    if (name === 'stroke') values.moveTime = min * (Math.min(max, 60) / min) ** random();
    tryOut(values);
  }
  if (random() < 0.5) tryOut({ ...job.values, motion: 'move list' }, randomMoves(random, job.values.travel));
  return job;
}

function randomMoves(random: () => number, travel: number): Job['moves'] {
  const positions = Array.from({ length: 2 + Math.floor(random() * 4) }, () => (random() - 0.5) * travel);
  return positions.map((to, k) => {
    const distance = Math.abs(to - present(positions.at(k - 1)));
    const { min, max } = moveTimeRange(distance);
    return {
      to,
      ...moveLimits(distance, min * (max / min) ** (0.01 + 0.98 * random())),
      dwell: random(),
    };
  });
}
