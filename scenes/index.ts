import { checkParameters } from '../shared/core/check.ts';
import { defaultParameters } from '../shared/core/parameters/table.ts';
import { type Problem, problemTexts } from '../shared/core/problem.ts';
import { DRIVE_TYPES, type Preset, type Presets, type Scene, type Shelf } from '../shared/core/scene.ts';
import { AS_WRITTEN } from '../shared/core/sentence.ts';
import { readScene } from '../shared/files/sceneFile.ts';
import fourMotors from './four-motors-one-misaligned.json' with { type: 'json' };
import freePullCoreless from './free-pull-coreless.json' with { type: 'json' };
import freePullIron from './free-pull-iron.json' with { type: 'json' };
import mouldShuttle from './mould-shuttle.json' with { type: 'json' };
import nanometreStaircase from './nanometre-staircase.json' with { type: 'json' };
import flat from './presets/flat.json' with { type: 'json' };
import flat600 from './presets/flat-600.json' with { type: 'json' };
import flat1200 from './presets/flat-1200.json' with { type: 'json' };
import screw from './presets/screw.json' with { type: 'json' };
import screw160 from './presets/screw-160.json' with { type: 'json' };
import screw600 from './presets/screw-600.json' with { type: 'json' };
import screw60020 from './presets/screw-600-20.json' with { type: 'json' };
import screw640Fine from './presets/screw-640-fine.json' with { type: 'json' };
import screw1200 from './presets/screw-1200.json' with { type: 'json' };
import tubular from './presets/tubular.json' with { type: 'json' };
import tubular150 from './presets/tubular-150.json' with { type: 'json' };
import tubular400 from './presets/tubular-400.json' with { type: 'json' };
import uChannel from './presets/u-channel.json' with { type: 'json' };
import uChannel100 from './presets/u-channel-100.json' with { type: 'json' };
import uChannel150 from './presets/u-channel-150.json' with { type: 'json' };
import screwBacklash from './screw-backlash.json' with { type: 'json' };
import slowScanCoreless from './slow-scan-coreless.json' with { type: 'json' };
import slowScanIron from './slow-scan-iron.json' with { type: 'json' };
import softBase from './soft-base.json' with { type: 'json' };
import softCoilMounting from './soft-coil-mounting.json' with { type: 'json' };
import verticalCounterbalance from './vertical-counterbalance.json' with { type: 'json' };

/** The drives of the shelf, by id: each form in several sizes. The first of a form is the one that the scenes use; its id is the form. */
export const PRESETS: Presets = {
  tubular: preset('tubular', tubular),
  'tubular-150': preset('tubular-150', tubular150),
  'tubular-400': preset('tubular-400', tubular400),
  'u-channel': preset('u-channel', uChannel),
  'u-channel-100': preset('u-channel-100', uChannel100),
  'u-channel-150': preset('u-channel-150', uChannel150),
  flat: preset('flat', flat),
  'flat-600': preset('flat-600', flat600),
  'flat-1200': preset('flat-1200', flat1200),
  screw: preset('screw', screw),
  'screw-160': preset('screw-160', screw160),
  'screw-600': preset('screw-600', screw600),
  'screw-600-20': preset('screw-600-20', screw60020),
  'screw-640-fine': preset('screw-640-fine', screw640Fine),
  'screw-1200': preset('screw-1200', screw1200),
};

/** The scenes of the shelf, in the order they are offered. The id of each is the name of its file. */
export const SCENES: readonly Scene[] = [
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

export const SHELF: Shelf = { presets: PRESETS, scenes: SCENES };

/** The scene that opens. */
export const DEFAULT_SCENE: Scene = sceneById('mould-shuttle');

/** The scene of the shelf with this id. @throws Error if there is none */
export function sceneById(id: string): Scene {
  const found = SCENES.find((each) => each.id === id);
  if (!found) throw new Error(`There is no scene ${id}.`);
  return found;
}

interface PresetFile {
  readonly title: string;
  readonly driveType: string;
  readonly crossover: number;
  readonly parameters: unknown;
}

function preset(id: string, { title, driveType, crossover, parameters }: PresetFile): Preset {
  const checked = checkParameters(parameters, defaultParameters());
  if (checked.problems.length > 0) throw refusal(`presets/${id}.json`, checked.problems);
  const known = DRIVE_TYPES.find((each) => each === driveType);
  if (known === undefined)
    throw new Error(`presets/${id}.json: driveType ${driveType} is not one of ${DRIVE_TYPES.join(', ')}.`);
  return { title, driveType: known, crossover, parameters: checked.changes };
}

function scene(id: string, file: unknown): Scene {
  const result = readScene(file, { presets: PRESETS, scenes: [] });
  if ('problems' in result) throw refusal(`${id}.json`, result.problems);
  return { ...result.scene, id };
}

function refusal(file: string, problems: readonly Problem[]): Error {
  return new Error([`${file} is not legal.`, ...problemTexts(problems, AS_WRITTEN)].join('\n'));
}
