import { cascadeOf, type ParallelGains } from '../../shared/axis/loop/cascade.ts';
import { inUnit, ranged } from '../../shared/core/format.ts';
import { element, setHidden, setText, symbolNode } from '../ui/dom.ts';

/** The three gains read as a position loop round a speed loop; only shown, never set. */
export class CascadeView {
  readonly element: HTMLElement;
  readonly #position = element('dd');
  readonly #velocity = element('dd');
  readonly #reset = element('dd');
  readonly #list: HTMLElement;
  readonly #none = element('p');

  constructor() {
    const term = (text: string, symbol: string) => element('dt', {}, text, ' ', symbolNode(symbol));
    this.#list = element(
      'dl',
      {},
      ...[term('Position gain', 'K_v'), this.#position],
      ...[term('Velocity gain', 'K_vel'), this.#velocity],
      ...[term('Reset time', 'T_n'), this.#reset],
    );
    this.element = element(
      'section',
      { class: 'cascade', 'aria-label': 'Equivalent cascade' },
      element('h3', {}, 'As a cascade'),
      this.#list,
      this.#none,
    );
  }

  show(gains: ParallelGains): void {
    const cascade = cascadeOf(gains);
    const none = typeof cascade === 'string';
    setHidden(this.#list, none);
    setHidden(this.#none, !none);
    if (none) {
      setText(this.#none, cascade);
      return;
    }
    setText(this.#position, inUnit(cascade.positionGain, '1/s'));
    setText(this.#velocity, inUnit(cascade.velocityGain, 'N·s/m'));
    setText(this.#reset, Number.isFinite(cascade.resetTime) ? ranged(cascade.resetTime, 's') : 'none');
  }
}
