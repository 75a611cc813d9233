import type { Store } from '../../bench/store.ts';
import type { Messages } from '../../ui/messages.ts';
import { RestTimer } from '../../ui/timing/restTimer.ts';
import { whenText } from './whenText.ts';
import { type KeptStudy, readWork, STEPS, type Work, workOf, workText } from './work.ts';
import { claim, type EarlierWork, earlierWork, keepWork, newPage } from './workTable.ts';

interface KeeperOptions {
  readonly store: Store;
  readonly messages: Messages;
  /** The study as it stands; null: none was opened. */
  study(): KeptStudy | null;
  /** Shows a study as it was kept. */
  openStudy(study: KeptStudy): void;
}

/** From a change to its keeping, ms: a drag is kept once. */
const REST = 400;

/** Keeps what is made on this page in the browser's database as one goes, and offers it when the page is opened again. */
export class Keeper {
  readonly #options: KeeperOptions;
  #page = newPage();
  #release = claim(this.#page);
  readonly #timer = new RestTimer(REST, () => void this.keep());
  #keeping: Promise<boolean> = Promise.resolve(true);
  #hasSaidSo = false;

  constructor(options: KeeperOptions) {
    this.#options = options;
    options.store.subscribe(() => this.changed());
    // The last moment at which a page can still keep something.
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'hidden' && this.#timer.isDue) void this.keep();
    });
    window.addEventListener('pagehide', () => {
      if (this.#timer.isDue) void this.keep();
    });
  }

  /** The name that the work of this page is kept under. */
  get page(): string {
    return this.#page;
  }

  /** Something was made: it is kept as soon as there is a rest. */
  changed(): void {
    this.#timer.touch();
  }

  /** Keeps everything now. Whether it is kept. */
  keep(): Promise<boolean> {
    this.#timer.cancel();
    const { store, study } = this.#options;
    const work = workOf(store.timeline(STEPS), study(), Date.now());
    // One after the other, so that an older state never takes the place of a newer one.
    this.#keeping = this.#keeping.then(() => this.#put(work));
    return this.#keeping;
  }

  /** Offers the work of the page that was closed last, without getting in the way of anything. */
  async offer(): Promise<void> {
    const earlier = await earlierWork().catch(() => []);
    // A lesson that a link opens changes the bench at once: what this page has kept by now is not earlier work.
    const last = earlier.find(({ page, isOpen }) => !isOpen && page !== this.#page);
    if (!last) return;
    const { work } = last;
    this.#options.messages.offer(
      'Earlier work',
      `Your work from ${whenText(work.kept)} is kept in this browser: ${workText(work)}.`,
      [
        { label: 'Continue where you left off', action: () => void this.goOnWith(last) },
        { label: 'Start fresh', action: () => this.#options.messages.note(STAYS) },
      ],
    );
  }

  /** Puts earlier work in place of what is on the page, which stays kept. */
  async goOnWith({ page, work }: EarlierWork): Promise<void> {
    const { store, messages, openStudy } = this.#options;
    const read = readWork(work);
    if (!read) {
      const consequence = 'It stays in this browser, and the bench is unchanged.';
      messages.problems(
        'The earlier work was not opened',
        ['It was kept by another version of Waybench.'],
        consequence,
      );
      return;
    }
    // What was made here meanwhile stays kept under its own name.
    if (this.#timer.isDue) await this.keep();
    this.#page = page;
    this.#release();
    this.#release = claim(page);
    store.restore(read.bench);
    if (read.study) openStudy(read.study);
  }

  async #put(work: Work): Promise<boolean> {
    try {
      await keepWork(this.#page, work);
      return true;
    } catch (error) {
      this.#sayOnce(error);
      return false;
    }
  }

  #sayOnce(error: unknown): void {
    if (this.#hasSaidSo) return;
    this.#hasSaidSo = true;
    const isNewer = error instanceof DOMException && error.name === 'VersionError';
    this.#options.messages.note(isNewer ? NEWER : REFUSED);
  }
}

const STAYS = 'Your earlier work stays in this browser: File, Earlier work.';
const NEWER =
  'This browser holds work from a newer version of Waybench. It is left untouched, and nothing is kept from this page: save your work as a file.';
const REFUSED =
  'This browser keeps nothing for this page: whatever is not saved as a file is lost when the page is closed.';
