import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { History } from '../history/history.ts';
import { element } from '../ui/dom.ts';
import { errorGauge } from './errorGauge.ts';
import { currentGauge, forceGauge, voltageGauge } from './headroomGauges.ts';
import { Reading } from './reading.ts';
import { windingGauge } from './windingGauge.ts';
import './gauges.css';

export interface Gauges {
  /** To be called once per display refresh with the newest value of each channel. */
  update(now: Float64Array, p: Parameters, history: History): void;
  themeChanged(): void;
  dispose(): void;
}

/** Numbers change at most this often, so that they can be read, ms. */
const WRITE_INTERVAL = 100;

/** The gauges in `host`: following error, winding temperature, and the headroom in current, force and voltage. */
export function createGauges(host: HTMLElement): Gauges {
  const instruments = [errorGauge(), windingGauge(), currentGauge(), forceGauge(), voltageGauge()];
  const root = element(
    'div',
    // Scrolls where the page is low, so the keyboard must reach it.
    { class: 'gauge-list', tabindex: 0, role: 'group', 'aria-label': 'Readings' },
    ...instruments.map((instrument) => instrument.element),
  );
  let writtenAt = Number.NEGATIVE_INFINITY;
  host.append(root);

  return {
    update(now, p, history) {
      const reading = new Reading(now, p, history);
      for (const instrument of instruments) instrument.move(reading);
      const time = performance.now();
      if (time - writtenAt < WRITE_INTERVAL) return;
      writtenAt = time;
      for (const instrument of instruments) instrument.write(reading);
    },
    // Styled by the page, so they follow a theme by themselves.
    themeChanged() {},
    dispose() {
      root.remove();
    },
  };
}
