import { afterEach, describe, expect, it } from 'vitest';
import { DEFAULT_STUDY } from '../../../scenes/defaultStudy.ts';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { onSignOfLife, signOfLife } from '../../../shared/core/signOfLife.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { sizeCandidate } from '../../../shared/sizing/sizeCandidate.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { transformOf } from '../../../workers/math/fourier.ts';
import { leastSquares } from '../../../workers/math/leastSquares.ts';
import { Axis } from '../../../workers/run/axis.ts';
import { timeLapse } from '../../../workers/timelapse/timeLapse.ts';

afterEach(() => onSignOfLife(() => {}));

const { parameters } = DEFAULT_SCENE;

/** What long computations consist of. */
const STEPS = {
  'a millisecond of a run': () => {
    const axis = new Axis(DEFAULT_SCENE);
    while (axis.time < 1e-3) axis.step();
  },
  'an analysis of the loop': () => analyse(parameters, startingPoint(parameters)),
  'a transform of a record': () => transformOf(new Float64Array(64)),
  'a fit of a line': () =>
    leastSquares([Float64Array.of(1, 2, 3), Float64Array.of(1, 1, 1)], Float64Array.of(1, 2, 4)),
  'a sizing': () => sizeCandidate(DEFAULT_STUDY.job, DEFAULT_SCENE),
};

describe('a sign of life', () => {
  it.each(Object.entries(STEPS))('is given by %s', (_, compute) => {
    let signs = 0;
    onSignOfLife(() => signs++);
    compute();
    expect(signs).toBeGreaterThan(0);
  });

  // A page gives a worker up after less than two seconds of silence, and a day of short steps takes longer than that.
  it('is given by every step of a day of heat, also where no cycle is run again', () => {
    let signs = 0;
    onSignOfLife(() => signs++);
    const atProgress: number[] = [];
    timeLapse(DEFAULT_SCENE, { hours: 1 }, () => void atProgress.push(signs));
    const steps = atProgress.slice(1, 12).map((each, k) => each - (atProgress[k] ?? 0));
    expect(steps).toHaveLength(11);
    for (const each of steps) expect(each).toBeGreaterThan(0);
  });

  it('is heard by the last listener alone, and by nobody where there is none', () => {
    signOfLife();
    const heard: string[] = [];
    onSignOfLife(() => heard.push('one'));
    onSignOfLife(() => heard.push('other'));
    signOfLife();
    expect(heard).toEqual(['other']);
  });
});
