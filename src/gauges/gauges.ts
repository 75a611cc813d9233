import type { Quantity } from '../../shared/core/channels.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { History } from '../history/history.ts';
import { element } from '../ui/dom.ts';
import { errorGauge } from './errorGauge.ts';
import { currentGauge, forceGauge, voltageGauge } from './headroomGauges.ts';
import { type Instrument, Reading } from './reading.ts';
import { windingGauge } from './windingGauge.ts';
import './gauges.css';

/** The gauges of the bench: following error, winding temperature, and the headroom in current, force and voltage. */
export class Gauges {
  readonly #error = errorGauge();
  readonly #ofQuantity: Partial<Record<Quantity, Instrument>> = {
    heat: windingGauge(),
    current: currentGauge(),
    force: forceGauge(),
    voltage: voltageGauge(),
  };
  readonly #instruments: readonly Instrument[] = [this.#error, ...Object.values(this.#ofQuantity)];

  constructor(host: HTMLElement) {
    host.append(
      element(
        'div',
        // Scrolls where the page is low, so the keyboard must reach it.
        { class: 'gauge-list', tabindex: 0, role: 'group', 'aria-label': 'Readings' },
        ...this.#instruments.map((instrument) => instrument.element),
      ),
    );
  }

  /** The gauge of this quantity, or else of the following error, is the one at the presenter size. */
  present(quantity: Quantity): void {
    const presented = this.#ofQuantity[quantity] ?? this.#error;
    for (const { element } of this.#instruments)
      element.classList.toggle('is-presented', element === presented.element);
  }

  /** Once per display refresh, with the newest value of each channel; the bars move, and the numbers follow when they are written. */
  update(now: Float64Array, p: Parameters, history: History, writes: boolean): void {
    const reading = new Reading(now, p, history);
    for (const instrument of this.#instruments) instrument.move(reading);
    if (!writes) return;
    for (const instrument of this.#instruments) instrument.write(reading);
  }
}
