import { KITS, SCENES } from '../../scenes/index.ts';
import { FORM_NAMES } from '../../shared/formNames.ts';
import type { Parameters } from '../../shared/parameters/table.ts';
import type { AxisStatus } from '../../shared/protocol.ts';
import type { Bench } from './bench.ts';
import { button, element } from './dom.ts';
import { type Actions, keyOf } from './keys.ts';
import type { Layout } from './layout.ts';
import { createMenu, item, type MenuItem } from './menu.ts';
import { createPicker } from './picker.ts';
import type { Theme } from './theme.ts';
import { createTransport } from './transport.ts';

export interface BarOptions {
  readonly actions: Actions;
  readonly layout: Layout;
  readonly theme: () => Theme;
  onPace(pace: number): void;
  onKit(id: string): void;
  readonly moreFiles: readonly MenuItem[];
  readonly moreHelp: readonly MenuItem[];
}

export interface Bar {
  show(bench: Bench): void;
  showStatus(status: AxisStatus, drive: Parameters['drive']): void;
  changePace(by: -1 | 0 | 1): void;
}

/** The bar on top: what is on the bench, how it runs, and the menus. */
export function createBar(host: HTMLElement, options: BarOptions): Bar {
  const { actions, layout, theme, onPace, onKit, moreFiles, moreHelp } = options;
  const scenes = createPicker(
    'Scene',
    SCENES.map(({ name, scene }) => ({ value: name, words: scene.title })),
    (name) => actions.scene(SCENES.findIndex((shelf) => shelf.name === name)),
  );
  const kits = createPicker(
    'Drive',
    Object.entries(KITS).map(([value, { title, form }]) => ({
      value,
      words: title,
      group: FORM_NAMES[form],
    })),
    onKit,
  );
  const transport = createTransport(actions, onPace);
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
    element('div', { class: 'bar-place' }, scenes.element, kits.element),
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
    show({ origin, kit }) {
      scenes.show(SCENES.find(({ scene }) => scene.title === origin.title)?.name ?? null, origin.title);
      kits.show(kit, 'own drive');
    },
    showStatus: transport.show,
    changePace: transport.changePace,
  };
}
