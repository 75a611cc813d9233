import { PRESETS, SCENES } from '../../scenes/index.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { DRIVE_TYPE_LABELS } from '../../shared/core/scene.ts';
import type { AxisStatus } from '../../shared/protocol/axis.ts';
import type { Bench } from '../bench/bench.ts';
import { button, element } from '../ui/dom.ts';
import { type Actions, keyOf } from '../ui/keys.ts';
import { createMenu, item, type MenuItem } from '../ui/menu.ts';
import { isPenOut } from '../ui/pen.ts';
import { createPicker, type Picker } from '../ui/picker.ts';
import type { Theme } from '../ui/theme.ts';
import { NumberClock } from '../ui/timing/numberClock.ts';
import { Transport } from '../ui/transport/transport.ts';
import type { Layout } from './layout.ts';

interface BarOptions {
  readonly actions: Actions;
  readonly layout: Layout;
  readonly theme: () => Theme;
  readonly isRms: () => boolean;
  readonly slowMotion: MenuItem;
  onTimeScale(timeScale: number): void;
  onPreset(id: string): void;
  readonly moreFiles: readonly MenuItem[];
  readonly moreHelp: readonly MenuItem[];
}

const STATES = { paused: 'Paused', running: 'Running', tripped: 'Tripped' };

const DRIVES = { on: '', off: ', drive off', shorted: ', shorted' };

/** The bar on top: what is on the bench, how it runs, and the menus. */
export class Bar {
  readonly #scenes: Picker;
  readonly #presets: Picker;
  readonly #transport: Transport;
  readonly #numbers = new NumberClock();
  #wasRunning = false;

  constructor(host: HTMLElement, options: BarOptions) {
    const { actions, onPreset } = options;
    this.#scenes = createPicker(
      'Scene',
      SCENES.map(({ id, title }) => ({ value: id ?? '', text: title })),
      (id) => actions.scene(SCENES.findIndex((scene) => scene.id === id)),
    );
    this.#presets = createPicker(
      'Drive',
      Object.entries(PRESETS).map(([value, { title, driveType }]) => ({
        value,
        text: title,
        group: DRIVE_TYPE_LABELS[driveType],
      })),
      onPreset,
    );
    this.#transport = benchTransport(options);
    host.append(
      element('div', { class: 'bar-place' }, this.#scenes.element, this.#presets.element),
      this.#transport.element,
      element(
        'div',
        { class: 'bar-menus' },
        button('Which drive?', actions.study, { keys: keyOf('study') }),
        ...menus(options),
      ),
    );
  }

  show({ origin }: Bench): void {
    this.#scenes.show(origin.id, origin.title);
    this.#presets.show(origin.preset, 'own drive');
  }

  /** With every frame. While it runs, the time and the pace are written as often as they can be read. */
  showStatus(status: AxisStatus, drive: Parameters['drive']): void {
    const isRunning = status.state === 'running';
    const writes = this.#numbers.isDue();
    if (isRunning && this.#wasRunning && !writes) return;
    this.#wasRunning = isRunning;
    this.#transport.show({
      state: status.state,
      stateText: STATES[status.state] + DRIVES[drive],
      timeText: `${status.time.toFixed(5)} s`,
      asked: status.timeScale,
      achieved: status.achievedTimeScale,
      lost: status.lostTime,
      isSlow: status.isSlow,
      engine: status.engine,
    });
  }

  showStopped(): void {
    this.#wasRunning = false;
    this.#transport.showStopped();
  }

  changeTimeScale(by: -1 | 0 | 1): void {
    this.#transport.changeTimeScale(by);
  }
}

function benchTransport({ actions, onTimeScale }: BarOptions): Transport {
  return new Transport({
    label: 'Run',
    runOrPause: actions.runOrPause,
    steps: [
      button('Tick', actions.tick, {
        title: 'One period of the current loop',
        keys: keyOf('tick'),
        class: 'desk-only',
      }),
      button('Move', actions.move, {
        title: 'One move, then pause',
        keys: keyOf('move'),
        class: 'desk-only',
      }),
    ],
    reset: { label: 'Reset', title: 'Back to the start of the scene', action: actions.reset },
    onTimeScale,
  });
}

function menus({
  actions,
  layout,
  theme,
  isRms,
  slowMotion,
  moreFiles,
  moreHelp,
}: BarOptions): HTMLElement[] {
  return [
    deskOnly(
      createMenu('File', [
        item('Open …', actions, 'openFile'),
        item('Save scene', actions, 'saveScene'),
        item('Copy link', actions, 'copyLink'),
        item('Gain sheet', actions, 'gainSheet'),
        item('Tuning snapshots', actions, 'snapshots'),
        ...moreFiles,
      ]),
    ),
    createMenu('View', [
      item('Tuning panel', actions, 'tuning', () => layout.isShown('panel')),
      item('Gauges', actions, 'gauges', () => layout.isShown('gauges')),
      item('Charts', actions, 'charts', () => layout.isShown('charts')),
      item('Presenter size', actions, 'presenter', () => layout.isPresenting),
      item('Draw on the page', actions, 'pen', () => isPenOut()),
      item('Dark', actions, 'theme', () => theme() === 'dark'),
      item('Currents as RMS', actions, 'currents', isRms),
      item('Beside another axis', actions, 'beside'),
      slowMotion,
      item('Next cut-away', actions, 'cutaway'),
      item('Inside the motor', actions, 'field'),
      item('Sound of the motor', actions, 'sound'),
      item('Video of the stage', actions, 'film'),
      item('Reset view', actions, 'resetView'),
    ]),
    button('Lessons', actions.lessons, { class: 'presenter-only', keys: keyOf('lessons') }),
    deskOnly(
      createMenu('Help', [item('Lessons …', actions, 'lessons'), item('Keys', actions, 'help'), ...moreHelp]),
    ),
  ];
}

/** Out of sight at the presenter size. */
function deskOnly(part: HTMLElement): HTMLElement {
  part.classList.add('desk-only');
  return part;
}
