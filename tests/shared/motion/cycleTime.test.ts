import { describe, expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { cycleTime } from '../../../shared/motion/cycle.ts';
import { Program } from '../../../workers/command/program.ts';
import { newProgramOutput } from '../../../workers/command/setpoint.ts';
import { bareScene } from '../../workers/model/sceneOf.ts';

/** What the program itself takes from the end of its first cycle to that of its second, s, and what sampling may add to it. */
function walked({ parameters: p, moves }: Scene): { time: number; sampling: number } {
  const rate = p.currentRate / p.positionDivider;
  const program = new Program(p, moves);
  const out = newProgramOutput();
  const ends: { sample: number; segment: number }[] = [];
  for (let sample = 0; ends.length < 2; sample++) {
    program.advance(sample / rate, out);
    if (out.cycle > ends.length) ends.push({ sample, segment: out.segment });
  }
  const [first, second] = ends as [(typeof ends)[0], (typeof ends)[0]];
  return { time: (second.sample - first.sample) / rate, sampling: (second.segment - first.segment) / rate };
}

/** Each segment begins at a sample. */
function expectRight(scene: Scene): void {
  const { time, sampling } = walked(scene);
  expect(Math.abs((cycleTime(scene) ?? Number.NaN) - time)).toBeLessThanOrEqual(1.01 * sampling);
}

describe('the time of a cycle', () => {
  it.each(SCENES.filter(({ parameters }) => parameters.drive === 'on'))('$id', (scene) => {
    expectRight(scene);
  });

  it.each<ParameterChanges>([
    { program: 'step', dwell: 0.3 },
    { program: 'sine', sineFrequency: 3 },
    { program: 'force pulse', pulseTime: 0.05, dwell: 0.4 },
    { program: 'scan', stroke: 0.01, scanSpeed: 0.02, dwell: 0 },
  ])('of $program', (changes) => {
    expectRight(bareScene(changes));
  });

  it('of sweeps, which end on a whole period of each frequency', () => {
    const chirp: ParameterChanges = { program: 'chirp', sweepFrom: 5, sweepTime: 0.7, dwell: 0.1 };
    expectRight(bareScene(chirp));
    const tones: ParameterChanges = { program: 'stepped sine', sweepTime: 2, sweepPoints: 20, dwell: 0.1 };
    expectRight(bareScene({ ...tones, sweepFrom: 100, sweepTo: 400 }));
  });

  it('of a list, back from its last line to its first', () => {
    const line = (to: number, dwell: number) => ({ to, speed: 1, acceleration: 10, jerk: 500, dwell });
    expectRight({
      ...bareScene({ program: 'list', start: 0 }),
      moves: [line(0.1, 0.2), line(-0.05, 0), line(0.02, 0.1)],
    });
  });

  it('is none where nothing repeats', () => {
    expect(cycleTime(bareScene({ program: 'hold' }))).toBeNull();
    expect(cycleTime(bareScene({ program: 'list' }))).toBeNull();
    expect(cycleTime(bareScene({ program: 'shuttle', drive: 'off' }))).toBeNull();
  });
});
