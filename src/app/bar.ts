import { PRESETS, SCENES } from '../../scenes/index.ts';
import { DRIVE_TYPE_LABELS } from '../../shared/core/driveTypeLabels.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { AxisStatus } from '../../shared/protocol/axis.ts';
import type { Bench } from '../bench/bench.ts';
import { button, element } from '../ui/dom.ts';
import { type Actions, keyOf } from '../ui/keys.ts';
import { createMenu, item, type MenuItem } from '../ui/menu.ts';
import { createPicker } from '../ui/picker.ts';
import type { Theme } from '../ui/theme.ts';
import { createTransport } from '../ui/transport/transport.ts';
import type { Layout } from './layout.ts';

export interface BarOptions {
  readonly actions: Actions;
  readonly layout: Layout;
  readonly theme: () => Theme;
  onTimeScale(timeScale: number): void;
  onPreset(id: string): void;
  readonly moreFiles: readonly MenuItem[];
  readonly moreHelp: readonly MenuItem[];
}

export interface Bar {
  show(bench: Bench): void;
  showStatus(status: AxisStatus, drive: Parameters['drive']): void;
  changeTimeScale(by: -1 | 0 | 1): void;
}

/** The bar on top: what is on the bench, how it runs, and the menus. */
export function createBar(host: HTMLElement, options: BarOptions): Bar {
  const { actions, layout, theme, onTimeScale, onPreset, moreFiles, moreHelp } = options;
  const scenes = createPicker(
    'Scene',
    SCENES.map(({ id, title }) => ({ value: id ?? '', text: title })),
    (id) => actions.scene(SCENES.findIndex((scene) => scene.id === id)),
  );
  const presets = createPicker(
    'Drive',
    Object.entries(PRESETS).map(([value, { title, driveType }]) => ({
      value,
      text: title,
      group: DRIVE_TYPE_LABELS[driveType],
    })),
    onPreset,
  );
  const transport = createTransport(actions, onTimeScale);
  const file = createMenu('File', [
    item('Open …', actions, 'openFile'),
    item('Save scene', actions, 'saveScene'),
    item('Copy link', actions, 'copyLink'),
    item('Gain sheet', actions, 'gainSheet'),
    item('Tuning snapshots', actions, 'snapshots'),
    ...moreFiles,
  ]);
  const view = createMenu('View', [
    item('Tuning panel', actions, 'tuning', () => layout.isShown('panel')),
    item('Gauges', actions, 'gauges', () => layout.isShown('gauges')),
    item('Charts', actions, 'charts', () => layout.isShown('charts')),
    item('Presenter size', actions, 'presenter', () => layout.isPresenting),
    item('Dark', actions, 'theme', () => theme() === 'dark'),
    item('Next cut-away', actions, 'cutaway'),
    item('Reset view', actions, 'resetView'),
  ]);
  const help = createMenu('Help', [item('Keys', actions, 'help'), ...moreHelp]);
  host.append(
    element('div', { class: 'bar-place' }, scenes.element, presets.element),
    transport.element,
    element(
      'div',
      { class: 'bar-menus' },
      button('Which drive?', actions.study, { keys: keyOf('study') }),
      file,
      view,
      help,
    ),
  );

  return {
    show({ origin }) {
      scenes.show(origin.id, origin.title);
      presets.show(origin.preset, 'own drive');
    },
    showStatus: transport.show,
    changeTimeScale: transport.changeTimeScale,
  };
}
