import { checkNumber, checkParameters } from '../core/check.ts';
import { PARAMETERS, type ParameterName, type Parameters, parameterRow } from '../core/parameters/table.ts';
import {
  type Failure,
  failure,
  isRecord,
  MAX_PROBLEMS,
  type Problem,
  shown,
  unknownName,
} from '../core/problem.ts';
import type { Shelf } from '../core/scene.ts';
import type { AxisEvent, TuningSession } from '../protocol/axis.ts';
import { openFile } from './jsonFile.ts';
import { readScene, sceneEntries } from './sceneFile.ts';

/**
 * A session file is JSON: `{ "waybench": "session", "version": 1, "scene": <a scene file>, "events": [ … ], "ticks": n }`.
 * An event is `{ "tick": n, "kind": "change", "changes": { … } }` or `{ "tick": n, "kind": "hand", "position": x or null }`.
 */
export const SESSION_VERSION = 1;

/** A hand pulls to wherever a travel limit can be. */
const HAND_ROW = PARAMETERS.travelMax;

const FILE_ENTRIES = ['waybench', 'version', 'scene', 'events', 'ticks'];

/** Reads the text of a session file, or its parsed value. Total: a session that can be replayed, or what is wrong. */
export function readSession(input: unknown, shelf: Shelf): { readonly session: TuningSession } | Failure {
  const opened = openFile(input, 'session', SESSION_VERSION);
  if ('problems' in opened) return opened;
  const { scene: sceneEntry, events: eventEntries, ticks, ...others } = opened.entries;
  const stray = Object.keys(others).find((name) => !FILE_ENTRIES.includes(name));
  if (stray !== undefined) {
    return { problems: [unknownName('an entry of a session file', stray, FILE_ENTRIES, others[stray])] };
  }
  if (typeof sceneEntry === 'string')
    return failure('scene', sceneEntry, 'scene: text is not a scene. Give the scene itself.');
  const scene = readScene(sceneEntry, shelf);
  if ('problems' in scene) {
    return { problems: scene.problems.map((each) => ({ ...each, field: `scene.${each.field}` })) };
  }
  if (!isCount(ticks)) {
    return failure(
      'ticks',
      ticks,
      `ticks: ${shown(ticks)} is not a number of current-loop periods. Give a whole number, 0 or more.`,
    );
  }
  const events = checkEvents(eventEntries, scene.scene.parameters, ticks);
  if ('problems' in events) return events;
  return { session: { scene: scene.scene, events: events.events, ticks } };
}

/** Reads back as the same session, number by number. */
export function writeSession({ scene, events, ticks }: TuningSession): string {
  const entries = {
    waybench: 'session',
    version: SESSION_VERSION,
    scene: sceneEntries(scene),
    events,
    ticks,
  };
  return `${JSON.stringify(entries, null, 1)}\n`;
}

function isCount(value: unknown): value is number {
  return Number.isSafeInteger(value) && (value as number) >= 0;
}

/** Each event is checked against the parameters as the events before it left them. */
function checkEvents(
  input: unknown,
  start: Parameters,
  ticks: number,
): { readonly events: readonly AxisEvent[] } | Failure {
  if (!Array.isArray(input))
    return failure('events', input, `events: ${shown(input)} is not a list of events.`);
  const events: AxisEvent[] = [];
  let parameters = start;
  let earliest = 0;
  for (const [index, entry] of input.entries()) {
    const field = `events[${index}]`;
    const checked = checkEvent(entry, field, parameters, earliest, ticks);
    if ('problems' in checked) return { problems: checked.problems.slice(0, MAX_PROBLEMS) };
    events.push(checked);
    earliest = checked.tick;
    if (checked.kind === 'change') parameters = { ...parameters, ...checked.changes };
  }
  return { events };
}

function checkEvent(
  entry: unknown,
  field: string,
  parameters: Parameters,
  earliest: number,
  latest: number,
): AxisEvent | Failure {
  if (!isRecord(entry)) return failure(field, entry, `${field}: ${shown(entry)} is not an event.`);
  const { tick, kind, position, changes } = entry;
  if (!isCount(tick) || tick < earliest || tick > latest) {
    return failure(
      `${field}.tick`,
      tick,
      `${field}.tick: ${shown(tick)} is outside ${earliest} to ${latest}. Events stand in the order of their ticks.`,
    );
  }
  if (kind === 'hand') return checkHand(position, tick, field);
  if (kind === 'change') return checkChange(changes, tick, field, parameters);
  return failure(`${field}.kind`, kind, `${field}.kind: ${shown(kind)} is not one of change, hand.`);
}

function checkHand(position: unknown, tick: number, field: string): AxisEvent | Failure {
  if (position === null) return { tick, kind: 'hand', position };
  const checked = checkNumber(position, HAND_ROW);
  if ('legal' in checked) return { tick, kind: 'hand', position: checked.legal };
  return failure(`${field}.position`, position, `${field}.position: ${checked.wrong} Give null to let go.`);
}

function checkChange(
  input: unknown,
  tick: number,
  field: string,
  parameters: Parameters,
): AxisEvent | Failure {
  const { changes, problems } = checkParameters(input, parameters);
  const inPlace = (problem: Problem): Problem => ({
    ...problem,
    field: `${field}.changes.${problem.field}`,
    message: `${field}: ${problem.message}`,
  });
  if (problems.length > 0) return { problems: problems.map(inPlace) };
  const restarting = Object.keys(changes).find((name) => parameterRow(name as ParameterName).restart);
  if (restarting === undefined) return { tick, kind: 'change', changes };
  return failure(
    `${field}.changes.${restarting}`,
    changes[restarting as ParameterName],
    `${field}: ${restarting} cannot change while the axis runs. Set it in the scene.`,
  );
}
