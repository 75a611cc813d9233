import './soundPane.css';
import { continuousForce } from '../../../shared/axis/motor.ts';
import { at } from '../../../shared/core/at.ts';
import { ranged } from '../../../shared/core/format.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { History } from '../../history/history.ts';
import { fitToScreen } from '../../plot/canvas/canvas.ts';
import { element, setText } from '../../ui/dom.ts';
import { cssColour } from '../../ui/look/colours.ts';
import { amplitudesAt, ForceWave, sampleOf, WAVE_RATE } from './forceWave.ts';
import { Loudspeaker } from './loudspeaker.ts';

/** Frequencies of the spectrum, Hz, even in the logarithm. */
const [FIRST, LAST, COUNT] = [20, 3200, 90] as const;
const FREQUENCIES = Array.from({ length: COUNT }, (_, i) => FIRST * (LAST / FIRST) ** (i / (COUNT - 1)));
/** Samples that a spectrum is made of, and simulated time from one to the next, s. */
const LENGTH = 2048;
const INTERVAL = 0.12;
/** Share of the continuous force that is about as loud as it gets. */
const FULL = 0.1;
/** Heights run over these decades below the full scale. */
const DECADES = 4;
const [SLOWEST, FASTEST] = [0.05, 4];

/** The motor force as a sound and as a spectrum. Off to begin with. */
export class SoundPane {
  readonly #canvas = element('canvas', { role: 'img', 'aria-label': 'Spectrum of the motor force' });
  readonly #loudest = element('span');
  readonly element = element(
    'figure',
    { class: 'sound-pane', 'aria-label': 'Sound of the motor force', hidden: true },
    element('div', {}, element('strong', {}, 'Motor force'), this.#loudest),
    this.#canvas,
    element('div', {}, ...['20 Hz', '250 Hz', '3.2 kHz'].map((text) => element('span', {}, text))),
  );
  readonly #wave = new ForceWave();
  #loudspeaker: Loudspeaker | null = null;
  #recent = new Float64Array(LENGTH);
  #fresh = 0;

  get isOn(): boolean {
    return !this.element.hidden;
  }

  /** To be called from what a person does: a browser plays nothing before. */
  toggle(): void {
    this.element.hidden = this.isOn;
    if (!this.isOn) {
      this.#loudspeaker?.off();
      return;
    }
    this.#recent.fill(0);
    if (!this.#loudspeaker && 'AudioContext' in globalThis) this.#loudspeaker = new Loudspeaker();
    this.#loudspeaker?.on();
    this.#draw(1);
  }

  /** Once per display refresh; `pace` in simulated seconds per second. */
  follow(history: History, p: Parameters, pace: number): void {
    if (!this.isOn) return;
    const wave = this.#wave.read(history);
    if (wave.length === 0) return;
    const full = FULL * continuousForce(p);
    const samples = Float32Array.from(wave, (force) => sampleOf(force, full));
    this.#loudspeaker?.play(samples, Math.min(Math.max(pace, SLOWEST), FASTEST));
    this.#remember(wave);
    this.#fresh += wave.length;
    if (this.#fresh < INTERVAL * WAVE_RATE) return;
    this.#fresh = 0;
    this.#draw(full);
  }

  #remember(wave: Float64Array): void {
    const taken = wave.subarray(Math.max(wave.length - LENGTH, 0));
    this.#recent.copyWithin(0, taken.length);
    this.#recent.set(taken, LENGTH - taken.length);
  }

  #draw(full: number): void {
    const amplitudes = amplitudesAt(this.#recent, FREQUENCIES);
    const peak = amplitudes.indexOf(Math.max(...amplitudes));
    const force = at(amplitudes, peak);
    setText(
      this.#loudest,
      force > 0 ? `${ranged(force, 'N', 2)} at ${ranged(at(FREQUENCIES, peak), 'Hz', 2)}` : '',
    );
    const { clientWidth, clientHeight } = this.#canvas;
    const pen = this.#canvas.getContext('2d') as CanvasRenderingContext2D;
    fitToScreen(pen, clientWidth, clientHeight);
    pen.clearRect(0, 0, clientWidth, clientHeight);
    pen.fillStyle = cssColour('--line');
    for (let d = 0; d <= DECADES; d++)
      pen.fillRect(0, Math.min((clientHeight * d) / DECADES, clientHeight - 1), clientWidth, 1);
    pen.fillStyle = cssColour('--q-force');
    const width = clientWidth / COUNT;
    amplitudes.forEach((amplitude, i) => {
      const share = Math.min(Math.max(1 + Math.log10(amplitude / full) / DECADES, 0), 1);
      pen.fillRect(i * width, clientHeight * (1 - share), 0.75 * width, clientHeight * share);
    });
  }
}
