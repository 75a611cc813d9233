import type { AxisStatus } from '../../shared/protocol/axis.ts';

type State = AxisStatus['state'];

/** Frames after which a wish counts as answered: one may have been on its way, the next one knows of it. */
const PATIENCE = 2;

/**
 * Whether the axis runs, as far as the page can know: what was ordered last, until a frame has answered it. Without
 * this, a second press of the key would repeat the first order while frames come slowly.
 */
export class RunRequest {
  #request: State | null = null;
  #frames = 0;

  /** Turns round what holds now, and returns it. */
  toggle(state: State): 'running' | 'paused' {
    const request = (this.#request ?? state) === 'running' ? 'paused' : 'running';
    this.#request = request;
    this.#frames = 0;
    return request;
  }

  /** A frame has come with this state. */
  answer(state: State): void {
    this.#frames++;
    if (state === this.#request || this.#frames >= PATIENCE) this.#request = null;
  }
}
