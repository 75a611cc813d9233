import { checkParameters } from '../shared/check.ts';
import type { ShelfScene } from '../shared/link.ts';
import { defaultParameters } from '../shared/parameters/table.ts';
import type { Problem } from '../shared/problem.ts';
import { FORMS, type Kit, type Scene } from '../shared/scene.ts';
import { readScene } from '../shared/sceneFile.ts';
import fourMotors from './four-motors-one-misaligned.json' with { type: 'json' };
import freePullCoreless from './free-pull-coreless.json' with { type: 'json' };
import freePullIron from './free-pull-iron.json' with { type: 'json' };
import flat from './kits/flat.json' with { type: 'json' };
import flat600 from './kits/flat-600.json' with { type: 'json' };
import flat1200 from './kits/flat-1200.json' with { type: 'json' };
import screw from './kits/screw.json' with { type: 'json' };
import screw160 from './kits/screw-160.json' with { type: 'json' };
import screw600 from './kits/screw-600.json' with { type: 'json' };
import screw640Fine from './kits/screw-640-fine.json' with { type: 'json' };
import screw1200 from './kits/screw-1200.json' with { type: 'json' };
import tubular from './kits/tubular.json' with { type: 'json' };
import tubular150 from './kits/tubular-150.json' with { type: 'json' };
import tubular400 from './kits/tubular-400.json' with { type: 'json' };
import uChannel from './kits/u-channel.json' with { type: 'json' };
import uChannel100 from './kits/u-channel-100.json' with { type: 'json' };
import uChannel150 from './kits/u-channel-150.json' with { type: 'json' };
import mouldShuttle from './mould-shuttle.json' with { type: 'json' };
import nanometreStaircase from './nanometre-staircase.json' with { type: 'json' };
import screwBacklash from './screw-backlash.json' with { type: 'json' };
import slowScanCoreless from './slow-scan-coreless.json' with { type: 'json' };
import slowScanIron from './slow-scan-iron.json' with { type: 'json' };
import softBase from './soft-base.json' with { type: 'json' };
import softCoilMounting from './soft-coil-mounting.json' with { type: 'json' };
import verticalCounterbalance from './vertical-counterbalance.json' with { type: 'json' };

/** The drives of the shelf, by id: each form in several sizes. The first of a form is the one that the scenes use; its id is the form. */
export const KITS: Readonly<Record<string, Kit>> = {
  tubular: kit('tubular', tubular),
  'tubular-150': kit('tubular-150', tubular150),
  'tubular-400': kit('tubular-400', tubular400),
  'u-channel': kit('u-channel', uChannel),
  'u-channel-100': kit('u-channel-100', uChannel100),
  'u-channel-150': kit('u-channel-150', uChannel150),
  flat: kit('flat', flat),
  'flat-600': kit('flat-600', flat600),
  'flat-1200': kit('flat-1200', flat1200),
  screw: kit('screw', screw),
  'screw-160': kit('screw-160', screw160),
  'screw-600': kit('screw-600', screw600),
  'screw-640-fine': kit('screw-640-fine', screw640Fine),
  'screw-1200': kit('screw-1200', screw1200),
};

/** The scenes of the shelf, in the order they are offered. */
export const SCENES: readonly ShelfScene[] = [
  scene('mould-shuttle', mouldShuttle),
  scene('slow-scan-coreless', slowScanCoreless),
  scene('slow-scan-iron', slowScanIron),
  scene('nanometre-staircase', nanometreStaircase),
  scene('soft-coil-mounting', softCoilMounting),
  scene('screw-backlash', screwBacklash),
  scene('vertical-counterbalance', verticalCounterbalance),
  scene('four-motors-one-misaligned', fourMotors),
  scene('soft-base', softBase),
  scene('free-pull-iron', freePullIron),
  scene('free-pull-coreless', freePullCoreless),
];

/** The scene that opens. */
export const DEFAULT_SCENE: Scene = SCENES[0]!.scene;

interface KitFile {
  readonly title: string;
  readonly form: string;
  readonly crossover: number;
  readonly parameters: unknown;
}

function kit(id: string, { title, form, crossover, parameters }: KitFile): Kit {
  const checked = checkParameters(parameters, defaultParameters());
  if (checked.problems.length > 0) throw refusal(`kits/${id}.json`, checked.problems);
  const known = FORMS.find((each) => each === form);
  if (known === undefined)
    throw new Error(`kits/${id}.json: form ${form} is not one of ${FORMS.join(', ')}.`);
  return { title, form: known, crossover, parameters: checked.changes };
}

function scene(name: string, file: unknown): ShelfScene {
  const result = readScene(file, KITS);
  if ('problems' in result) throw refusal(`${name}.json`, result.problems);
  return { name, scene: result.scene };
}

function refusal(file: string, problems: readonly Problem[]): Error {
  return new Error([`${file} is not legal.`, ...problems.map(({ message }) => message)].join('\n'));
}
