import type { Scene } from '../../shared/core/scene.ts';
import type { Bench } from '../bench/bench.ts';
import type { BesideRoom } from '../sideBySide/besideRoom.ts';
import { byId } from '../ui/dom.ts';
import type { Actions } from '../ui/keys.ts';
import { PlaceOfBench } from './placeOfBench.ts';

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
  readonly #place = new PlaceOfBench();
  #room: BesideRoom | null = null;

  constructor(options: BesideDoorOptions) {
    this.#options = options;
  }

  /** What the keyboard does there; null while the bench is shown. */
  get keys(): Partial<Actions> | null {
    return this.#place.isTaken ? (this.#room?.keys ?? null) : null;
  }

  async toggle(): Promise<void> {
    if (this.#room && this.#place.isTaken) {
      this.#leave(this.#room);
      return;
    }
    const { BesideRoom } = await import('../sideBySide/besideRoom.ts');
    if (!this.#room) {
      const room: BesideRoom = new BesideRoom({
        common: this.#options.common,
        leave: () => this.#leave(room),
        openOnBench: (scene) => {
          this.#leave(room);
          this.#options.openOnBench(scene);
        },
      });
      byId('bench').after(room.element);
      this.#room = room;
    }
    const room = this.#room;
    this.#place.take(room.heading, () => room.show(this.#options.bench()));
    this.#options.onBench(false);
  }

  #leave(room: BesideRoom): void {
    this.#place.giveBack(room.element, () => room.show(null));
    this.#options.onBench(true);
  }
}
