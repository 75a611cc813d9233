import { PRESETS, SCENES } from '../../scenes/index.ts';
import { gainsInStructure } from '../../shared/axis/loop/loopGains.ts';
import { startGains } from '../../shared/axis/loop/startGains.ts';
import { checkParameters } from '../../shared/core/check.ts';
import type { CoggingTable } from '../../shared/core/coggingTable.ts';
import type { LearnedMove } from '../../shared/core/learnedMove.ts';
import type { RowValue } from '../../shared/core/parameters/row.ts';
import {
  type ParameterChanges,
  type ParameterName,
  parameterRow,
} from '../../shared/core/parameters/table.ts';
import { problemText, problemTexts } from '../../shared/core/problem.ts';
import type { MoveLine, Scene } from '../../shared/core/scene.ts';
import { sentenceText } from '../../shared/core/sentence.ts';
import type { PretuneGoal } from '../../shared/protocol/pretune.ts';
import { parameterLabel, valueText } from '../ui/fields/label.ts';
import type { Messages } from '../ui/messages.ts';
import { BENCH_WORDING, benchOf, withChanges } from './bench.ts';
import { withPreset } from './presets.ts';
import type { Store } from './store.ts';

/** What a person can do to the bench, each checked before it reaches the store. */
export class BenchActions {
  readonly #store: Store;
  readonly #messages: Messages;

  constructor(store: Store, messages: Messages) {
    this.#store = store;
    this.#messages = messages;
  }

  /** Sets one parameter if it is legal beside the others; returns what is wrong, or null. */
  propose(name: ParameterName, value: RowValue, gesture: string | null): string | null {
    const { changes, problems } = checkParameters({ [name]: value }, this.#store.bench.parameters);
    const [problem] = problems;
    // It stands below its field.
    if (problem) return sentenceText(problem.message, BENCH_WORDING);
    const { parameters } = this.#store.bench;
    // Another structure takes the loop over as it is.
    const taken = changes.controller ? gainsInStructure(parameters, changes.controller) : {};
    this.#store.change(
      { ...taken, ...changes },
      `${parameterLabel(name)} ${valueText(parameterRow(name), value)}`,
      gesture,
    );
    return null;
  }

  startGains(crossover: number): string | null {
    const { parameters } = this.#store.bench;
    const { changes, problems } = checkParameters(startGains(parameters, crossover), parameters);
    const [problem] = problems;
    if (problem) return problemText(problem, BENCH_WORDING);
    this.#store.change(changes, `start gains for ${crossover} Hz`);
    return null;
  }

  /** Sets several parameters as one step, or as part of a gesture, if they are legal; returns what is wrong, or null. */
  shape(input: ParameterChanges, text: string, gesture: string | null): string | null {
    const { changes, problems } = checkParameters(input, this.#store.bench.parameters);
    const [problem] = problems;
    if (problem) return problemText(problem, BENCH_WORDING);
    this.#store.change(changes, text, gesture);
    return null;
  }

  /** Sets what pretuning found for a goal, if it is legal; returns what is wrong, or null. */
  usePretuned(goal: PretuneGoal, input: ParameterChanges, text: string): string | null {
    const { bench } = this.#store;
    const { changes, problems } = checkParameters(input, bench.parameters);
    const [problem] = problems;
    if (problem) return problemText(problem, BENCH_WORDING);
    this.#store.replace({ ...withChanges(bench, changes), pretuned: { goal, changes } }, text);
    return null;
  }

  resetAll(): void {
    this.#store.change(this.#store.bench.origin.parameters, 'all values reset to the scene');
  }

  toggleDrive(): void {
    const on = this.#store.bench.parameters.drive === 'on';
    this.propose('drive', on ? 'off' : 'on', null);
    this.#messages.note(on ? 'Drive off: the table is free.' : 'Drive on.');
  }

  openScene(scene: Scene, text: string): void {
    this.#store.replace(benchOf(scene), text);
    this.#messages.say(`${scene.title}. ${scene.lookFor}`);
  }

  openShelfScene(index: number): void {
    const scene = SCENES[index];
    if (scene) this.openScene(scene, scene.title);
  }

  /** Moves of a checked list, and the program that goes through them. */
  useMoves(moves: readonly MoveLine[]): void {
    const { bench } = this.#store;
    const { parameters } = bench;
    this.#store.replace(
      { ...bench, origin: { ...bench.origin, moves }, parameters: { ...parameters, program: 'list' } },
      `a list of ${moves.length} moves`,
    );
  }

  /** Puts a learned table on the bench and switches it on. */
  useCoggingTable(coggingTable: CoggingTable): void {
    const { bench } = this.#store;
    this.#store.replace(
      {
        origin: { ...bench.origin, coggingTable },
        parameters: { ...bench.parameters, coggingCompensation: true },
      },
      'learned cogging table',
    );
  }

  removeCoggingTable(): void {
    const { origin, parameters } = this.#store.bench;
    const { coggingTable: _, ...others } = origin;
    this.#store.replace(
      { origin: others, parameters: { ...parameters, coggingCompensation: false } },
      'cogging table removed',
    );
  }

  /** Puts a force that was learned for the repeated move on the bench; null takes it off. */
  useLearnedMove(learnedMove: LearnedMove | null): void {
    const { bench } = this.#store;
    const { learnedMove: _, ...origin } = bench.origin;
    this.#store.replace(
      { ...bench, origin: learnedMove ? { ...origin, learnedMove } : origin },
      learnedMove ? 'learned move' : 'learned move removed',
    );
  }

  choosePreset(id: string): void {
    const title = PRESETS[id]?.title ?? id;
    const chosen = withPreset(this.#store.bench, id, PRESETS);
    if ('problems' in chosen) {
      this.#messages.problems(
        `${title} does not fit unchanged`,
        problemTexts(chosen.problems, BENCH_WORDING),
        'The drive on the bench is unchanged. Fix this first, then choose again:',
      );
    } else {
      this.#store.replace(chosen, title);
    }
  }
}
