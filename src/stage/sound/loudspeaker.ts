import { WAVE_RATE } from './forceWave.ts';

/** Time by which sound lags what is seen, so that an uneven refresh leaves no gap, s. */
const LAG = 0.08;

/** Plays stretches of samples one after the other. */
export class Loudspeaker {
  readonly #context = new AudioContext();
  #next = 0;

  /** `pace`: simulated seconds per second, at which it is heard lower or higher. */
  play(samples: Float32Array<ArrayBuffer>, pace: number): void {
    if (samples.length === 0 || this.#context.state !== 'running') return;
    const buffer = this.#context.createBuffer(1, samples.length, WAVE_RATE);
    buffer.copyToChannel(samples, 0);
    const source = this.#context.createBufferSource();
    source.buffer = buffer;
    source.playbackRate.value = pace;
    source.connect(this.#context.destination);
    const now = this.#context.currentTime;
    // After a gap, and where it has fallen far behind, it begins anew.
    if (this.#next < now || this.#next > now + 4 * LAG) this.#next = now + LAG;
    source.start(this.#next);
    this.#next += samples.length / WAVE_RATE / pace;
  }

  on(): void {
    void this.#context.resume();
  }

  off(): void {
    void this.#context.suspend();
  }
}
