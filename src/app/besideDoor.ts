import type { Scene } from '../../shared/core/scene.ts';
import type { Bench } from '../bench/bench.ts';
import type { BesideRoom } from '../sideBySide/besideRoom.ts';
import { byId } from '../ui/dom.ts';
import type { Actions } from '../ui/keys.ts';

interface BesideDoorOptions {
  bench(): Bench;
  openOnBench(scene: Scene): void;
  /** The bench goes out of sight, or comes back. */
  onBench(shown: boolean): void;
  readonly common: Pick<Actions, 'theme' | 'currents' | 'presenter' | 'beside'>;
}

/** Between the bench and two axes beside each other, which are fetched when they are first asked for. */
export class BesideDoor {
  readonly #options: BesideDoorOptions;
  #room: BesideRoom | null = null;
  #isOpen = false;

  constructor(options: BesideDoorOptions) {
    this.#options = options;
  }

  /** What the keyboard does there; null while the bench is shown. */
  get keys(): Partial<Actions> | null {
    return this.#isOpen ? (this.#room?.keys ?? null) : null;
  }

  async toggle(): Promise<void> {
    if (this.#isOpen) {
      this.#show(false);
      return;
    }
    const { BesideRoom } = await import('../sideBySide/besideRoom.ts');
    if (!this.#room) {
      this.#room = new BesideRoom({
        common: this.#options.common,
        leave: () => this.#show(false),
        openOnBench: (scene) => {
          this.#show(false);
          this.#options.openOnBench(scene);
        },
      });
      byId('bench').after(this.#room.element);
    }
    this.#show(true);
  }

  #show(open: boolean): void {
    this.#isOpen = open;
    byId('bench').hidden = open;
    this.#room?.show(open ? this.#options.bench() : null);
    this.#options.onBench(!open);
  }
}
