import { at, valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import { plainAmperes } from '../../shared/core/currentUnit.ts';
import { fixed, ranged } from '../../shared/core/format.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { cssGradient, HEAT_MIDDLE, heatColour, signedColour } from './build/colourScales.ts';
import { PHASES } from './build/electrics.ts';
import type { Cutaway } from './cutawayMode.ts';

/** The legend of the cut-away: what its colours mean. */
export class Legend {
  readonly element = document.createElement('div');
  readonly #title = document.createElement('strong');
  readonly #bar = document.createElement('div');
  readonly #ends = [0, 1, 2].map(() => document.createElement('span'));
  readonly #nodes = document.createElement('dl');
  #shown = '';
  #shownNodes = '';

  constructor() {
    this.element.className = 'stage-legend';
    this.#bar.className = 'stage-legend-bar';
    const ends = document.createElement('div');
    ends.className = 'stage-legend-ends';
    ends.append(...this.#ends);
    this.element.append(this.#title, this.#bar, ends, this.#nodes);
    this.setMode('closed');
  }

  setMode(mode: Cutaway): void {
    this.element.hidden = mode === 'closed';
    this.#shown = this.#shownNodes = '';
    this.#nodes.replaceChildren();
    this.#title.textContent = mode === 'temperature' ? 'Temperature' : 'Current in the coils';
    this.#bar.style.background =
      mode === 'temperature' ? cssGradient(heatColour, 0, 1) : cssGradient(signedColour, -1, 1);
  }

  /** Amplitude at the ends of the scale, A, and the current of each phase. */
  showCurrent(fullScale: number, phases: readonly number[]): void {
    this.#write([`−${ranged(fullScale, 'A', 2)}`, '0', `+${ranged(fullScale, 'A', 2)}`]);
    // Of this moment: neither a peak nor a mean.
    this.#list(phases.map((current, k) => [at(PHASES, k), plainAmperes(ranged(current, 'A peak', 2))]));
  }

  showHeat(now: Float64Array, p: Parameters): void {
    const middle = p.ambient + HEAT_MIDDLE * (p.windingLimit - p.ambient);
    this.#write([p.ambient, middle, p.windingLimit].map((t) => fixed(t, '°C', 0)));
    const nodes: [string, number][] = [
      ['Winding', valueAt(now, C.windingTemperature)],
      [p.lead > 0 ? 'Housing' : 'Carrier', valueAt(now, C.carrierTemperature)],
      ['Table', valueAt(now, C.tableTemperature)],
    ];
    if (p.lead > 0) nodes.push(['Screw', valueAt(now, C.screwTemperature)]);
    this.#list(nodes.map(([name, t]) => [name, fixed(t, '°C', 0)]));
  }

  #list(rows: readonly (readonly [string, string])[]): void {
    const text = rows.join();
    if (text === this.#shownNodes) return;
    this.#shownNodes = text;
    this.#nodes.replaceChildren(
      ...rows.flatMap(([name, text]) => {
        const [term, value] = [document.createElement('dt'), document.createElement('dd')];
        term.textContent = name;
        value.textContent = text;
        return [term, value];
      }),
    );
  }

  #write(texts: readonly string[]): void {
    if (this.#shown === texts.join()) return;
    this.#shown = texts.join();
    texts.forEach((text, i) => {
      at(this.#ends, i).textContent = text;
    });
  }
}
