import { checkNumber, checkParameters } from '../check.ts';
import { type Failure, failure } from '../jsonFile.ts';
import { findKit, mostMotors } from '../kit.ts';
import { defaultParameters, PARAMETERS, type ParameterChanges } from '../parameters/table.ts';
import { isRecord, MOST_PROBLEMS, type Problem, shown, unknownName } from '../problem.ts';
import type { Kit } from '../scene.ts';
import { checkTuning } from '../tuning.ts';
import { DATASHEET_NAMES } from './datasheet.ts';
import type { Job } from './job.ts';
import { type LaneChoice, laneLetter } from './lane.ts';
import { laneScene } from './laneScene.ts';

type Kits = Readonly<Record<string, Kit>>;

const PARTS: readonly string[] = ['kit', 'motorCount', 'own', 'gains'] satisfies (keyof LaneChoice)[];

/** Checks a drive that is to do a legal job. Anything may come in; what the lane is made into is legal as a whole, or it is refused. */
export function checkLane(input: unknown, job: Job, kits: Kits): { readonly lane: LaneChoice } | Failure {
  if (!isRecord(input)) return failure('', input, `${shown(input)} is not a drive. Give an object.`);
  const stray = Object.keys(input).find((name) => !PARTS.includes(name));
  if (stray !== undefined) {
    return { problems: [unknownName('a part of a lane', stray, PARTS, input[stray])] };
  }
  const { kit: id, motorCount, own: ownInput, gains: gainInput } = input;
  const kit = findKit(id, kits);
  if ('problems' in kit) return kit;
  const count = checkNumber(motorCount ?? 1, PARAMETERS.motorCount);
  if ('wrong' in count) return failure('motorCount', motorCount, `motorCount: ${count.wrong}`);
  if (count.legal > mostMotors(kit)) {
    return failure(
      'motorCount',
      motorCount,
      `motorCount: ${count.legal} motors do not share a screw. Give 1.`,
    );
  }
  const own = checkDatasheet(ownInput ?? {}, kit);
  if ('problems' in own) return own;

  const untuned: LaneChoice = {
    kit: id as string,
    motorCount: count.legal,
    own: own.changes,
    gains: null,
  };
  const { parameters } = laneScene(job, untuned, kits);
  const { problems } = checkParameters(parameters, defaultParameters());
  if (problems.length > 0) return { problems };
  if (gainInput === undefined || gainInput === null) return { lane: untuned };
  const gains = checkTuning(gainInput, parameters);
  return 'problems' in gains ? gains : { lane: { ...untuned, gains: gains.changes } };
}

/** Checks what is typed over the values of a kit, for one motor. */
export function checkDatasheet(input: unknown, kit: Kit): { readonly changes: ParameterChanges } | Failure {
  const strays = Object.keys(isRecord(input) ? input : {}).filter((name) => !isDatasheetName(name));
  if (strays.length > 0) {
    const problems = strays.map((name) =>
      unknownName('an entry of a datasheet', name, DATASHEET_NAMES, (input as Record<string, unknown>)[name]),
    );
    return { problems: problems.slice(0, MOST_PROBLEMS) };
  }
  const { changes, problems } = checkParameters(input, { ...defaultParameters(), ...kit.parameters });
  return problems.length > 0 ? { problems } : { changes };
}

function isDatasheetName(name: string): boolean {
  return (DATASHEET_NAMES as readonly string[]).includes(name);
}

/** A problem of a lane, said with its place: “Lane B: …”. */
export function ofLane(index: number, { field, value, message }: Problem): Problem {
  return { field: `lanes[${index}].${field}`, value, message: `Lane ${laneLetter(index)}: ${message}` };
}
