import { checkNumber, checkOption, checkParameters } from '../core/check.ts';
import { parameterNamed } from '../core/parameters/labels.ts';
import {
  PARAMETER_NAMES,
  PARAMETERS,
  type ParameterChanges,
  type Parameters,
  parameterRow,
} from '../core/parameters/table.ts';
import {
  entryFailure,
  type Failure,
  isNot,
  isRecord,
  MAX_PROBLEMS,
  shown,
  unknownName,
  within,
} from '../core/problem.ts';
import type { Shelf } from '../core/scene.ts';
import { sentence } from '../core/sentence.ts';
import { MODEL_VERSION } from '../core/version.ts';
import { type AxisEvent, ENGINE_NAMES, type TuningSession } from '../protocol/axis.ts';
import { withFiltersOfToday } from './formerFilters.ts';
import { openFile } from './jsonFile.ts';
import { readScene, sceneEntries } from './sceneFile.ts';

/**
 * A session file is JSON: `{ "waybench": "session", "version": 2, "model": 1, "scene": <a scene file>, "engine": "odex", "events": [ … ], "ticks": n }`.
 * An event is `{ "tick": n, "kind": "change", "changes": { … } }`, `{ "tick": n, "kind": "hand", "position": x or null }` or
 * `{ "tick": n, "kind": "engine", "engine": "odex" or "batch" }`. Version 1 knew one engine.
 */
const SESSION_VERSION = 2;

/** Longest session that is replayed, h, s: that of a run from the command line. */
const HOURS = 10;
const LONGEST_SESSION = HOURS * 3600;

/** A hand pulls to wherever a travel limit can be. */
export const HAND_ROW = PARAMETERS.travelMax;

const FILE_ENTRIES = ['waybench', 'version', 'scene', 'engine', 'events', 'ticks'];

/** Reads the text of a session file, or its parsed value. Total: a session that can be replayed, or what is wrong. */
export function readSession(input: unknown, shelf: Shelf): { readonly session: TuningSession } | Failure {
  const opened = openFile(input, 'session', SESSION_VERSION);
  if ('problems' in opened) return opened;
  const { scene: sceneEntry, engine = 'odex', events: eventEntries, ticks, ...others } = opened.entries;
  const stray = Object.keys(others).find((name) => !FILE_ENTRIES.includes(name));
  if (stray !== undefined) {
    return { problems: [unknownName('an entry of a session file', stray, FILE_ENTRIES, others[stray])] };
  }
  if (typeof sceneEntry === 'string')
    return entryFailure('scene', sceneEntry, 'text is not a scene. Give the scene itself, as an object.');
  const scene = readScene(sceneEntry, shelf);
  if ('problems' in scene) {
    return { problems: scene.problems.map((each) => within('scene', each)) };
  }
  const checkedEngine = checkOption(engine, ENGINE_NAMES);
  if ('wrong' in checkedEngine) return entryFailure('engine', engine, checkedEngine.wrong);
  if (!isCount(ticks)) {
    const message = `${isNot(ticks, 'a number of current-loop periods')} Give a whole number, 0 or more.`;
    return entryFailure('ticks', ticks, message);
  }
  const { currentRate } = scene.scene.parameters;
  const most = LONGEST_SESSION * currentRate;
  if (ticks > most) {
    const message = `${shown(ticks)} periods of the current loop are more than ${HOURS} hours at ${currentRate} Hz. Give at most ${most}.`;
    return entryFailure('ticks', ticks, message);
  }
  const events = checkEvents(eventEntries, scene.scene.parameters, ticks);
  if ('problems' in events) return events;
  return { session: { scene: scene.scene, engine: checkedEngine.legal, events: events.events, ticks } };
}

/** Reads back as the same session, number by number. */
export function writeSession({ scene, engine = 'odex', events, ticks }: TuningSession): string {
  const entries = {
    waybench: 'session',
    version: SESSION_VERSION,
    model: MODEL_VERSION,
    scene: sceneEntries(scene),
    engine,
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
  if (!Array.isArray(input)) return entryFailure('events', input, isNot(input, 'a list of events'));
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
  if (!isRecord(entry)) return entryFailure(field, entry, isNot(entry, 'an event'));
  const { tick, kind, position, changes, engine } = entry;
  if (!isCount(tick) || tick < earliest || tick > latest) {
    const message = `${shown(tick)} is outside ${earliest} to ${latest}. Events must be in the order of their ticks.`;
    return entryFailure(`${field}.tick`, tick, message);
  }
  if (kind === 'hand') return checkHand(position, tick, field);
  if (kind === 'change') {
    const checked = checkChange(changes, `${field}.changes`, parameters, field);
    return 'problems' in checked ? checked : { tick, kind: 'change', changes: checked.changes };
  }
  if (kind === 'engine') {
    const checked = checkOption(engine, ENGINE_NAMES);
    if ('wrong' in checked) return entryFailure(`${field}.engine`, engine, checked.wrong);
    return { tick, kind, engine: checked.legal };
  }
  return entryFailure(`${field}.kind`, kind, isNot(kind, 'one of change, hand, engine'));
}

function checkHand(position: unknown, tick: number, field: string): AxisEvent | Failure {
  if (position === null) return { tick, kind: 'hand', position };
  const checked = checkNumber(position, HAND_ROW);
  if ('legal' in checked) return { tick, kind: 'hand', position: checked.legal };
  return entryFailure(`${field}.position`, position, sentence`${checked.wrong} Give null to let go.`);
}

/** Changes of a running axis, which no parameter may be among that needs a restart. `name` is what messages call the place. */
export function checkChange(
  input: unknown,
  place: string,
  parameters: Parameters,
  name = place,
): { readonly changes: ParameterChanges } | Failure {
  const named = isRecord(input) ? withFiltersOfToday(input) : input;
  const { changes, problems } = checkParameters(named, parameters);
  if (problems.length > 0) return { problems: problems.map((each) => within(place, each, name)) };
  const restarting = PARAMETER_NAMES.find((each) => each in changes && parameterRow(each).restart);
  if (restarting === undefined) return { changes };
  const message = sentence`${parameterNamed(restarting)} cannot change while the axis runs. Set it in the scene.`;
  return entryFailure(`${place}.${restarting}`, changes[restarting], message, name);
}
