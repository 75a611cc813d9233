import type { Scene } from '../../shared/core/scene.ts';
import type { LapseOptions, LapseSample, TimeLapse } from '../../shared/protocol/timeLapse.ts';
import { timeLapse } from '../timelapse/timeLapse.ts';
import { decimalOf } from './decimal.ts';
import { BadInput, DONE, TRIPPED, write } from './exit.ts';
import { jsonText } from './jsonText.ts';
import { lapseText } from './lapseText.ts';

/** What may be typed, SI and hours: option, lower and upper limit, what is asked for. */
const OPTIONS = {
  hours: [0, 1000, 'hours of duty above 0 and up to 1000'],
  windingTarget: [-20, 220, 'a winding temperature above −20 °C and up to 220 °C'],
  growthTarget: [0, 0.01, 'a growth at the tool above 0 m and up to 0.01 m'],
} as const satisfies Partial<Record<keyof LapseOptions, readonly [number, number, string]>>;

type TypedLapse = Readonly<Record<keyof typeof OPTIONS, string | undefined>>;

/** Runs hours of duty and prints what heat does. Returns the exit code. */
export function runLapse(scene: Scene, typed: TypedLapse, csvPath?: string, jsonPath?: string): number {
  const { drive, program } = scene.parameters;
  if (drive !== 'on')
    throw new BadInput(`drive is ${drive}: a drive that is not on has no duty. Set it to on.`);
  if (program === 'list' && scene.moves.length === 0)
    throw new BadInput(
      'program is list and the scene has no moves: there is no duty. Add moves or choose another program.',
    );
  const lapse = lapseOf(scene, readOptions(typed));
  if (csvPath !== undefined) write(csvPath, csvOf(lapse.asSet.samples));
  if (jsonPath !== undefined) write(jsonPath, jsonText(lapse));
  console.log(lapseText(scene, lapse));
  return lapse.asSet.trip ? TRIPPED : DONE;
}

function lapseOf(scene: Scene, options: Partial<LapseOptions>): TimeLapse {
  try {
    return timeLapse(scene, options);
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(error.message);
    throw error;
  }
}

function readOptions(typed: TypedLapse): Partial<LapseOptions> {
  const options: { -readonly [K in keyof typeof OPTIONS]?: number } = {};
  for (const name of Object.keys(OPTIONS) as (keyof typeof OPTIONS)[]) {
    const text = typed[name];
    if (text === undefined) continue;
    const [above, max, wanted] = OPTIONS[name];
    const value = decimalOf(text);
    if (!(value > above && value <= max))
      throw new BadInput(`--${optionOf(name)} is ${text}; give ${wanted}.`);
    options[name] = value;
  }
  return options;
}

/** windingTarget is typed as winding-target. */
function optionOf(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

/** Every sample, unrounded, SI and °C; empty without any. */
function csvOf(samples: readonly LapseSample[]): string {
  const columns = Object.keys(samples[0] ?? {}) as (keyof LapseSample)[];
  return [columns, ...samples.map((sample) => columns.map((column) => sample[column]))]
    .map((row) => `${row.join(',')}\n`)
    .join('');
}
