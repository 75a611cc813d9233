import './filmPane.css';
import { button, element, setText } from '../../ui/dom.ts';
import { FocusVisit } from '../../ui/focusVisit.ts';
import { keyOf } from '../../ui/keys.ts';
import { createSegmented } from '../../ui/segmented.ts';
import type { CaptionLine } from '../still.ts';
import { Film } from './film.ts';
import { type VideoFormat, videoFormat } from './videoFormat.ts';

/** Lengths to choose from, seconds of the clock; the last ends when it is stopped, and there at the latest. */
const LENGTHS = { '5 s': 5, '10 s': 10, '20 s': 20, 'until stopped': 60 } as const;
type Length = keyof typeof LENGTHS;
const OPEN_END = LENGTHS['until stopped'];

const HINT = `The video shows the stage with its numbers and the time, and stops after ${OPEN_END} s at the latest.`;

const CANNOT =
  'This browser cannot record a video of the stage. Save a picture of the stage (File), or open this page in another browser.';

const GAVE_UP =
  'The browser stopped recording and kept nothing. Try a shorter video, or a smaller window of the page.';

interface FilmPaneOptions {
  /** What is filmed. */
  readonly host: HTMLElement;
  /** What is written below the picture now. */
  readonly line: () => CaptionLine;
  onVideo(video: Blob, ending: VideoFormat['ending']): void;
  /** For a screen reader. */
  say(text: string): void;
}

/** Records a short video of the stage: how long, begun and stopped by a press, saved as a file. */
export class FilmPane {
  readonly #options: FilmPaneOptions;
  readonly #length = createSegmented('Length of the video', Object.keys(LENGTHS) as Length[], () => {});
  readonly #close = button('Close', () => this.#show(false));
  readonly #record = button('Record', () => this.#recordOrStop(), {
    class: 'primary',
    title: `Starts recording, or stops and saves; the key ${keyOf('film')} also stops it`,
  });
  /** Read out on request only: it changes every second. */
  readonly #state = element('output', { class: 'film-state', 'aria-live': 'off' });
  readonly #hint = element('p');
  readonly element = element(
    'section',
    { class: 'film-pane', 'aria-label': 'Video of the stage', hidden: true },
    element('strong', {}, 'Video of the stage'),
    this.#length.element,
    element('div', { class: 'film-ways' }, this.#record, this.#close, this.#state),
    this.#hint,
  );
  readonly #format = formatHere();
  #film: Film | null = null;
  readonly #focus = new FocusVisit();

  constructor(options: FilmPaneOptions) {
    this.#options = options;
    this.element.addEventListener('keydown', ({ key }) => {
      if (key === 'Escape') this.#show(false);
    });
    this.#record.disabled = this.#format === null;
    this.#hint.textContent = this.#format ? HINT : CANNOT;
  }

  get isRecording(): boolean {
    return this.#film !== null;
  }

  /** Opens the box; stops a video that is being recorded; closes the box. */
  toggle(): void {
    if (this.#film) this.stop();
    else this.#show(this.element.hidden !== false);
  }

  /** Ends a video at once; what was recorded is saved. */
  stop(): void {
    this.#film?.stop();
  }

  /** Once per display refresh, right after the stage has been drawn. */
  take(): void {
    if (!this.#film) return;
    this.#film.take(this.#options.line());
    const past = Math.floor(this.#film.length);
    setText(this.#state, `Recording: ${past} s of ${this.#limit} s`);
  }

  get #limit(): number {
    return LENGTHS[this.#length.value];
  }

  #show(shown: boolean): void {
    if (!shown) {
      this.stop();
      this.#focus.leave(this.element);
    }
    this.element.hidden = !shown;
    if (shown) this.#focus.enter(this.#format ? this.#record : this.#close);
  }

  #recordOrStop(): void {
    const format = this.#format;
    if (this.#film || !format) {
      this.stop();
      return;
    }
    try {
      this.#film = new Film(this.#options.host, format, this.#limit, (video) => this.#done(video, format));
    } catch {
      this.#done(null, format);
      return;
    }
    this.#showRecording(true);
    // The space bar is to run the axis now, not to stop the video.
    this.#focus.leave(this.element);
    this.#options.say(`Recording a video of the stage, ${this.#limit} seconds at most.`);
  }

  #done(video: Blob | null, { ending }: VideoFormat): void {
    this.#film = null;
    this.#showRecording(false);
    this.#hint.textContent = video ? HINT : GAVE_UP;
    if (video) this.#options.onVideo(video, ending);
    else this.#options.say(GAVE_UP);
  }

  #showRecording(on: boolean): void {
    this.element.classList.toggle('is-recording', on);
    setText(this.#record, on ? 'Stop and save' : 'Record');
    setText(this.#state, on ? `Recording: 0 s of ${this.#limit} s` : '');
    this.#length.element.toggleAttribute('disabled', on);
  }
}

/** What this browser can write; null: no video of a canvas. */
function formatHere(): VideoFormat | null {
  if (!('MediaRecorder' in globalThis) || !('captureStream' in HTMLCanvasElement.prototype)) return null;
  return videoFormat((type) => MediaRecorder.isTypeSupported(type));
}
