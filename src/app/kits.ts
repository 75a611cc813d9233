import { checkParameters } from '../../shared/check.ts';
import { kitParameters } from '../../shared/kit.ts';
import {
  defaultParameters,
  type ParameterChanges,
  type ParameterName,
  type Parameters,
} from '../../shared/parameters/table.ts';
import type { Problem } from '../../shared/problem.ts';
import type { Form, Kit, Scene } from '../../shared/scene.ts';
import { startGains } from '../../shared/startGains.ts';
import type { Bench } from './bench.ts';

export type Kits = Readonly<Record<string, Kit>>;

/** What makes a motor this motor; a scene may tune everything else of its drive and still be that drive. */
const MOTOR: readonly ParameterName[] = [
  'forceConstant',
  'torqueConstant',
  'resistance',
  'inductance',
  'polePitch',
  'lead',
];

/** The drive of the shelf that a scene uses, or null if its motor is none of them. */
export function kitOf({ form, parameters }: Pick<Scene, 'form' | 'parameters'>, kits: Kits): string | null {
  const isThis = (kit: Kit) =>
    kit.form === form &&
    MOTOR.every((name) => kit.parameters[name] === undefined || kit.parameters[name] === parameters[name]);
  return Object.keys(kits).find((id) => isThis(kits[id]!)) ?? null;
}

/**
 * Everything that putting another drive on the bench changes: the drive's parameters, those of any other drive back to
 * their defaults, and start gains for the mass that is moved then.
 */
export function kitChanges(parameters: Parameters, id: string, kits: Kits): ParameterChanges {
  const kit = kits[id]!;
  const byDefault = defaultParameters();
  const names = Object.values(kits).flatMap((each) => Object.keys(each.parameters) as ParameterName[]);
  const drive = {
    ...Object.fromEntries(names.map((name) => [name, byDefault[name]])),
    ...kitParameters(kit, parameters.motorCount),
  } as ParameterChanges;
  return { ...drive, ...startGains({ ...parameters, ...drive }, kit.crossover) };
}

/** The bench with another drive on it; what the person changed of the job stays, and stays marked as changed. */
export function withKit(
  bench: Bench,
  id: string,
  kits: Kits,
): Bench | { readonly problems: readonly Problem[] } {
  const { changes, problems } = checkParameters(kitChanges(bench.parameters, id, kits), bench.parameters);
  if (problems.length > 0) return { problems };
  const form: Form = kits[id]!.form;
  return {
    origin: { ...bench.origin, form, parameters: { ...bench.origin.parameters, ...changes } },
    kit: id,
    parameters: { ...bench.parameters, ...changes },
  };
}
