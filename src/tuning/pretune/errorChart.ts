import type { ErrorCourse } from '../../../shared/protocol/pretune.ts';
import type { Drawing } from '../../plot/drawing.ts';
import { lineChart } from '../../plot/lineChart.ts';
import { label } from '../../plot/marks.ts';
import { rangeOf } from '../../plot/range.ts';

interface NamedCourse {
  readonly name: string;
  readonly course: ErrorCourse;
}

const WIDTH = 760;
const ROW_HEIGHT = 150;

/** Two following errors of the same moves in one frame, the first dotted, each with its name at its end. */
export function errorChart(courses: readonly NamedCourse[]): Drawing {
  return lineChart(
    {
      description: `Following error over time: ${courses.map(({ name }) => name).join(', ')}`,
      ...scales(courses),
      series: courses.map(({ name, course }, k) => ({
        name,
        x: course.time,
        y: course.error,
        pen: { colour: 'error', width: 1.5, ...(k < courses.length - 1 && { dash: 'dotted' as const }) },
      })),
    },
    { width: WIDTH, height: 280 },
  );
}

/** Following errors of the same moves, one below the other on one scale: in one frame they would cover each other. */
export function errorRows(courses: readonly NamedCourse[]): Drawing[] {
  const common = scales(courses);
  return courses.map(({ name, course }) =>
    lineChart(
      {
        description: `Following error over time: ${name}`,
        ...common,
        series: [{ name: '', x: course.time, y: course.error, pen: { colour: 'error', width: 1.5 } }],
        notes: ({ frame }) => [label(frame.left + 8, frame.top + 12, name, { halo: true })],
      },
      { width: WIDTH, height: ROW_HEIGHT },
    ),
  );
}

function scales(courses: readonly NamedCourse[]) {
  const [from, to] = rangeOf(...courses.map(({ course }) => course.error));
  const [, end] = rangeOf(...courses.map(({ course }) => course.time));
  return {
    x: { title: 'Time', unit: 's', from: 0, to: end },
    y: { title: 'Error', unit: 'm', from, to },
  } as const;
}
