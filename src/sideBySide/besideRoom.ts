import './besideRoom.css';
import { PRESETS, SCENES } from '../../scenes/index.ts';
import { at } from '../../shared/core/at.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { applySnapshot } from '../../shared/files/snapshots.ts';
import { type Bench, presentScene, withChanges } from '../bench/bench.ts';
import { keptSnapshots } from '../bench/keptSnapshots.ts';
import { withPreset } from '../bench/presets.ts';
import { button, element } from '../ui/dom.ts';
import type { Actions } from '../ui/keys.ts';
import { grouped, labelled } from '../ui/picker.ts';
import { CommonChart } from './commonChart.ts';
import { commonHand } from './commonHand.ts';
import { CandidatesView } from './sideBySideView.ts';

interface BesideRoomOptions {
  /** Puts a scene on the bench and shows it. */
  openOnBench(scene: Scene): void;
  leave(): void;
  /** What the bench does as well. */
  readonly common: Pick<Actions, 'theme' | 'currents' | 'presenter' | 'beside'>;
}

/** What can stand beside the bench. */
interface Other {
  readonly value: string;
  readonly text: string;
  readonly group: string;
  readonly scene: Scene;
}

/** The axis of the bench and another one: one clock, one hand, one chart. */
export class BesideRoom {
  readonly element: HTMLElement;
  /** Has the focus when the room is opened. */
  readonly heading = element('h1', { tabindex: -1, 'aria-label': 'Waybench: two axes' }, 'Waybench');
  readonly keys: Partial<Actions>;
  readonly #options: BesideRoomOptions;
  readonly #choose: HTMLSelectElement;
  readonly #host = element('main', { class: 'candidates-pane' });
  #view: CandidatesView | null = null;
  #own: Scene | null = null;
  #others: readonly Other[] = [];

  constructor(options: BesideRoomOptions) {
    this.#options = options;
    this.#choose = element('select', { onchange: () => this.#load() });
    this.element = element(
      'div',
      { class: 'beside', hidden: true },
      element(
        'header',
        { class: 'bar' },
        this.heading,
        labelled('Beside', this.#choose),
        element('div', { class: 'bar-menus' }, button('Back to the bench', options.leave)),
      ),
      this.#host,
    );
    const { theme, currents, presenter, beside } = options.common;
    this.keys = { theme, currents, presenter, beside };
  }

  /** Shows the bench as it stands now beside the other axis; null: out of sight. */
  show(bench: Bench | null): void {
    this.element.hidden = bench === null;
    if (bench) {
      const chosen = this.#choose.value;
      this.#own = presentScene(bench);
      this.#others = othersOf(bench);
      this.#choose.replaceChildren(...grouped(this.#others));
      const isThere = this.#others.some(({ value }) => value === chosen);
      this.#choose.value = isThere ? chosen : firstChoice(this.#others, this.#own);
      this.#load();
    }
    this.#view?.setShown(bench !== null);
  }

  #load(): void {
    const own = this.#own;
    const other = this.#others.find(({ value }) => value === this.#choose.value);
    if (!own || !other) return;
    this.#view ??= this.#createView();
    const title = (scene: Scene) => (scene.preset !== null && PRESETS[scene.preset]?.title) || scene.title;
    this.#view.show(
      [
        { letter: 'A', title: `Bench: ${title(own)}`, scene: own, tuned: true },
        { letter: 'B', title: other.text, scene: other.scene, tuned: true },
      ],
      `A: ${own.title}, as it stands on the bench. B: ${other.text}. Each with its own gains.`,
    );
  }

  #createView(): CandidatesView {
    const view = new CandidatesView((index) => {
      const other = this.#others.find(({ value }) => value === this.#choose.value);
      if (index === 0 || !other) this.#options.leave();
      else this.#options.openOnBench(other.scene);
    });
    view.addControl(commonHand((offset) => view.pull(offset)));
    view.addChart(new CommonChart(() => view.redraw()));
    this.#host.append(view.element);
    Object.assign(this.keys, view.keys);
    return view;
  }
}

/** The scene before it was changed, snapshots of tunings, other drives in this scene, other scenes; what does not fit is left out. */
function othersOf(bench: Bench): readonly Other[] {
  const now = presentScene(bench);
  const asOpened: Other[] =
    bench.parameters === bench.origin.parameters
      ? []
      : [{ value: 'opened', text: 'as opened', group: 'This scene', scene: bench.origin }];
  const snapshots = keptSnapshots().snapshots.flatMap((snapshot): Other[] => {
    const read = applySnapshot(snapshot, bench.parameters);
    if ('problems' in read) return [];
    const scene = presentScene(withChanges(bench, read.changes));
    return [{ value: `snapshot ${snapshot.name}`, text: snapshot.name, group: 'Tuning snapshots', scene }];
  });
  const drives = Object.entries(PRESETS).flatMap(([id, { title }]): Other[] => {
    const chosen = id === now.preset ? null : withPreset(bench, id, PRESETS);
    if (!chosen || 'problems' in chosen) return [];
    return [
      {
        value: `drive ${id}`,
        text: title,
        group: 'This scene with another drive',
        scene: presentScene(chosen),
      },
    ];
  });
  const scenes = SCENES.map(
    (scene): Other => ({ value: `scene ${scene.id}`, text: scene.title, group: 'Another scene', scene }),
  );
  return [...asOpened, ...snapshots, ...drives, ...scenes];
}

/** The tuning before, else a drive of another form, else what comes first. */
function firstChoice(others: readonly Other[], own: Scene): string {
  const opened = others.find(({ value }) => value === 'opened');
  const form = others.find(({ scene }) => scene.driveType !== own.driveType);
  return (opened ?? form ?? at(others, 0)).value;
}
