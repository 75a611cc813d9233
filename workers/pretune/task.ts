import { isInTravel } from '../../shared/core/crossChecks.ts';
import { ranged } from '../../shared/core/format.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { moveTime } from '../../shared/motion/profile.ts';

/** What tunings are tried on, and how they are judged. */
export interface Task {
  readonly scene: Scene;
  /** Simulated time of one trial, s. */
  readonly seconds: number;
  readonly figure: 'settling time' | 'following error';
  /** The following error counts from this time on, s. */
  readonly from: number;
  /** How tunings are judged, as text. */
  readonly judged: string;
}

/** Largest number of steps of a staircase. */
const STAIRS = 8;
/** Moves beyond the first are tried only as long as all of them take no longer than this, s. */
const LONGEST = 3;
/**
 * Longest standstill that is simulated after a longer first move, s: a loop that needs more is not
 * worth choosing.
 */
const LONGEST_WAIT = 1;
/**
 * For a scan: time for start and initial friction, and time over which the following error is
 * measured, s.
 */
const SCAN_RUN_IN = 0.3;
const SCAN_WATCHED = 2;
/** Smallest number of cycles and time over which an oscillation is measured. */
const CYCLES = 3;
const MIN_WATCHED = 0.5;
/** A shuttle that replaces a program without moves, m and s. */
const STAND_IN_STROKE = 0.05;
const STAND_IN_DWELL = 0.2;

/** @param window within which a move counts as settled, m; that of the scene by default */
export function taskOf(given: Scene, window = given.parameters.window): Task {
  const scene = { ...given, parameters: { ...given.parameters, window } };
  const p = scene.parameters;
  if (p.drive !== 'on') return standIn(scene, 'The drive is off in this scene; it is tuned as if it were on');
  const settling = (seconds: number, moves: string): Task => ({
    scene,
    seconds,
    figure: 'settling time',
    from: 0,
    judged: `Judged by the settling time into ±${ranged(window, 'm')}, ${moves}.`,
  });
  switch (p.program) {
    case 'shuttle': {
      const move = moveTime(p.stroke, p);
      const thereAndBack = 2 * (move + p.dwell);
      return thereAndBack <= LONGEST
        ? settling(thereAndBack, 'the worst of one move there and one back')
        : settling(move + Math.min(p.dwell, LONGEST_WAIT), 'of one move');
    }
    case 'step':
      return settling(2 * p.dwell, 'the worst of one step there and one back');
    case 'staircase':
      return settling(
        STAIRS * (moveTime(p.stairStep, p) + p.dwell),
        `the worst of the first ${STAIRS} stairs`,
      );
    case 'list':
      if (scene.moves.length === 0) return standIn(scene, 'The move list of this scene is empty');
      return settling(listTime(scene), 'the worst of the moves of the list that were tried');
    case 'scan':
      return {
        scene,
        seconds: Math.min(SCAN_RUN_IN + SCAN_WATCHED, moveTime(p.stroke, { ...p, speed: p.scanSpeed })),
        figure: 'following error',
        from: SCAN_RUN_IN,
        judged: `A scan has no settling that counts: judged by the RMS following error at constant speed, over ${ranged(SCAN_WATCHED, 's', 2)} from ${ranged(SCAN_RUN_IN, 's', 2)} after the start.`,
      };
    case 'sine': {
      const from = 1 / p.sineFrequency;
      return {
        scene,
        seconds: from + Math.max(CYCLES / p.sineFrequency, MIN_WATCHED),
        figure: 'following error',
        from,
        judged: 'An oscillation does not settle: judged by the RMS following error after its first cycle.',
      };
    }
    default:
      return standIn(scene, `The program ${p.program} makes no moves`);
  }
}

/** A short shuttle under the limits of the scene, in the direction with room. */
function standIn(scene: Scene, why: string): Task {
  const p = scene.parameters;
  const stroke = isInTravel(p, p.start + STAND_IN_STROKE) ? STAND_IN_STROKE : -STAND_IN_STROKE;
  const dwell = Math.max(p.dwell, STAND_IN_DWELL);
  const task = taskOf({
    ...scene,
    parameters: { ...p, drive: 'on', program: 'shuttle', stroke, dwell },
  });
  return { ...task, judged: `${why}, on a shuttle of ${ranged(STAND_IN_STROKE, 'm')}. ${task.judged}` };
}

/**
 * Duration of the whole list, or of as many of its moves as take no longer than the limit, at least
 * one.
 */
function listTime({ moves, parameters }: Scene): number {
  let time = 0;
  let position = parameters.start;
  let hasMoved = false;
  for (const line of moves) {
    const move = moveTime(line.to - position, line);
    const next = time + move + line.dwell;
    if (next > LONGEST && hasMoved) return time;
    if (next > LONGEST && move > 0) return time + move + Math.min(line.dwell, LONGEST_WAIT);
    hasMoved ||= move > 0;
    time = next;
    position = line.to;
  }
  return time;
}
