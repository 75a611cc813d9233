import { isMotionUnwelcome } from '../ui/look/reducedMotion.ts';
import './sideBySide.css';
import { at } from '../../shared/core/at.ts';
import { shortest } from '../../shared/core/format.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { MEAN_TIME, PEAK_TIME } from '../gauges/reading.ts';
import type { Span } from '../plot/strip/columnBuffer.ts';
import { stepAtLeast } from '../plot/ticks.ts';
import { FilmPane } from '../stage/film/filmPane.ts';
import { timeText } from '../stage/film/stageLine.ts';
import type { CaptionLine } from '../stage/still.ts';
import { isDialogOpen } from '../ui/dialog.ts';
import { button, element, setText } from '../ui/dom.ts';
import { fileName, saveBlob } from '../ui/files.ts';
import { type Actions, keyOf } from '../ui/keys.ts';
import { withIndices } from '../ui/markup.ts';
import { createSegmented } from '../ui/segmented.ts';
import { CandidateCard, type CandidateName } from './candidateCard.ts';
import type { CommonChart } from './commonChart.ts';
import { CommonRange } from './commonRange.ts';
import { CandidatesRun } from './sideBySideRun.ts';
import { CandidatesStage } from './sideBySideStage.ts';
import { CandidatesTransport } from './sideBySideTransport.ts';

/** The strips show this many of the longest move, within bounds, s. */
const MOVES = 1.5;
const [MIN_SPAN, MAX_SPAN] = [0.1, 10];
/** Before the first move has ended, s. */
const FIRST_SPAN = 1;
/** Steps of the arrow keys, s. */
const STEP = 0.005;
const LARGE_STEP = 0.1;

const READINGS = `Errors and current: largest of ${PEAK_TIME} s. Force: RMS of ${MEAN_TIME} s.`;

interface ShownCandidate extends CandidateName {
  readonly scene: Scene;
}

/** Up to four axes in lockstep on one stage, each with its card, under one transport. One frame loop drives all of it. */
export class CandidatesView {
  readonly #run = new CandidatesRun();
  readonly #transport = new CandidatesTransport(this.#run);
  readonly #stage = new CandidatesStage();
  readonly #range = new CommonRange();
  readonly #statement = element('p');
  readonly #scale = createSegmented('Scale of the lenses', ['one scale', 'each its own'], () => {});
  readonly #words = element(
    'div',
    { class: 'candidates-words' },
    this.#statement,
    element('p', {}, READINGS),
    element('div', { class: 'candidates-scale' }, element('span', {}, 'Lenses'), this.#scale.element),
    button('Video …', () => this.#film.toggle(), {
      title: 'Records a short video of the machines, their numbers and the time',
      keys: keyOf('film'),
    }),
  );
  readonly #cardHost = element('div', { class: 'candidates-cards' });
  readonly #onBench: (index: number) => void;
  #cards: readonly CandidateCard[] = [];
  #values: readonly Float64Array[] = [];
  #chart: CommonChart | null = null;
  #names: readonly CandidateName[] = [];
  #loop = 0;
  #last = 0;
  #jumps = 0;
  #stripsAt = Number.NaN;

  readonly #floor = element('div', { class: 'candidates-floor' }, this.#stage.element, this.#cardHost);
  readonly #spoken = element('p', { class: 'visually-hidden', role: 'status' });
  readonly #film = new FilmPane({
    host: this.#floor,
    line: () => this.#line,
    onVideo: (video, ending) => {
      const name = fileName(`${this.#names.length} axes side by side`, ending);
      saveBlob(name, video);
      setText(this.#spoken, `Saved as ${name}.`);
    },
    say: (text) => setText(this.#spoken, text),
  });

  readonly element = element(
    'div',
    { class: 'candidates' },
    this.#transport.element,
    this.#words,
    this.#floor,
    this.#spoken,
  );

  /** What the keyboard sets off while the candidates are shown. */
  readonly keys: Partial<Actions> = {
    runOrPause: () => this.#run.runOrPause(),
    reset: () => this.#run.reset(),
    slower: () => this.#transport.changeTimeScale(-1),
    faster: () => this.#transport.changeTimeScale(1),
    realTime: () => this.#transport.changeTimeScale(0),
    live: () => this.#run.followLive(),
    resetView: () => this.#stage.resetView(),
    film: () => this.#film.toggle(),
  };

  constructor(onBench: (index: number) => void) {
    this.#onBench = onBench;
    this.#stage.element.append(this.#film.element);
    new ResizeObserver(() => this.#restyle()).observe(this.#cardHost);
    new MutationObserver(() => this.#restyle()).observe(document.documentElement, {
      attributeFilter: ['data-theme', 'data-size'],
    });
    this.#restyle();
    if (!isMotionUnwelcome()) this.#run.clock.run();
  }

  /** A choice that is not of how it is shown but of what. */
  addControl(control: HTMLElement): void {
    this.#words.append(control);
  }

  /** One chart of all candidates below them. */
  addChart(chart: CommonChart): void {
    this.#chart = chart;
    this.element.append(chart.element);
  }

  /** One hand on all tables, so far from where each was, m; null lets go. */
  pull(offset: number | null): void {
    this.#run.pull(offset);
  }

  /** Draws anew even what stands still. */
  redraw(): void {
    this.#stripsAt = Number.NaN;
  }

  show(candidates: readonly ShownCandidate[], statement: string): void {
    this.#statement.innerHTML = withIndices(statement).text;
    this.#run.load(candidates.map(({ scene }) => scene));
    const runs = this.#run.candidates;
    if (
      runs.length !== this.#cards.length ||
      runs.some((candidate, i) => this.#cards[i]?.candidate !== candidate)
    ) {
      this.#cards = runs.map(
        (candidate, i) =>
          this.#cards.find((card) => card.candidate === candidate) ??
          new CandidateCard(candidate, () => this.#onBench(i)),
      );
      this.#cardHost.replaceChildren(...this.#cards.map((card) => card.element));
      this.#cardHost.style.setProperty('--candidates', String(runs.length));
      this.#values = runs.map((candidate) => candidate.shown);
    }
    this.#names = candidates;
    for (const [i, card] of this.#cards.entries()) card.name(at(candidates, i));
    this.#stage.show(candidates);
    this.#restyle();
  }

  /** Runs its frame loop, or rests. */
  setShown(shown: boolean): void {
    cancelAnimationFrame(this.#loop);
    window.removeEventListener('keydown', this.#keyDown, true);
    if (!shown) {
      this.#film.stop();
      return;
    }
    window.addEventListener('keydown', this.#keyDown, true);
    this.#last = performance.now();
    this.#loop = requestAnimationFrame(this.#refresh);
  }

  picture(): string {
    return this.#stage.picture();
  }

  readonly #refresh = (time: number): void => {
    this.#loop = requestAnimationFrame(this.#refresh);
    const elapsed = Math.max(0, (time - this.#last) / 1000);
    this.#last = time;
    const run = this.#run;
    run.refresh(elapsed);
    if (run.jumps !== this.#jumps) {
      this.#jumps = run.jumps;
      for (const card of this.#cards) card.recall(run.time);
    }
    if (this.#film.isRecording) this.#stage.redraw();
    const drawn = this.#stage.draw(this.#values);
    this.#drawCards(run.time, elapsed);
    this.#transport.show();
    if (drawn) this.#film.take();
  };

  /** Below the pictures of a video: which machine is which, simulated time and pace. */
  get #line(): CaptionLine {
    const { clock, state, time } = this.#run;
    const { timeScale, achieved: achievedTimeScale, lost: lostTime, isSlow } = clock;
    return [
      this.#names.map(({ letter, title }) => `${letter}: ${title}`).join('; '),
      timeText({ time, state, timeScale, achievedTimeScale, lostTime, isSlow }),
    ];
  }

  #drawCards(moment: number, elapsed: number): void {
    const { clock, moment: looked, stopped } = this.#run;
    const resting = !clock.running || stopped || !looked.live;
    const errors: number[] = [];
    for (const [i, card] of this.#cards.entries()) {
      const error = card.take();
      if (!card.candidate.isStoppedAt(moment)) errors.push(error);
      this.#stage.setState(i, card.candidate.tripped ? 'tripped' : resting ? 'paused' : 'running');
    }
    this.#range.follow(errors, elapsed);
    const range = this.#scale.value === 'one scale' ? this.#range.range : null;
    for (const card of this.#cards) card.draw(moment, elapsed, range);
    if (moment !== this.#stripsAt) this.#drawStrips(moment);
  }

  /** All strips on one scale of time and error. */
  #drawStrips(moment: number): void {
    this.#stripsAt = moment;
    const span = this.#stripSpan(moment);
    const window = (columns: number): Span => {
      const column = span / columns;
      const to = Math.ceil(moment / column - 1e-6) * column;
      return { from: to - span, to };
    };
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const card of this.#cards) {
      if (card.candidate.isStoppedAt(moment) || !card.readStrip(window)) continue;
      low = Math.min(low, card.strip.low);
      high = Math.max(high, card.strip.high);
    }
    const label = shortest(span, 's');
    for (const { strip, candidate } of this.#cards) strip.draw(low, high, candidate.parameters.window, label);
    const shown = this.#cards.map(({ candidate }, i) => ({ letter: at(this.#names, i).letter, candidate }));
    this.#chart?.draw(shown, moment, window, label);
  }

  #stripSpan(moment: number): number {
    let longest = 0;
    for (const candidate of this.#run.candidates)
      longest = Math.max(longest, candidate.lastMove(moment)?.duration ?? 0);
    if (longest === 0) return FIRST_SPAN;
    return Math.min(Math.max(stepAtLeast(MOVES * longest), MIN_SPAN), MAX_SPAN);
  }

  #restyle(): void {
    this.#stripsAt = Number.NaN;
    for (const card of this.#cards) card.restyle();
    this.#chart?.restyle();
    this.#stage.setTheme(document.documentElement.getAttribute('data-theme') === 'dark' ? 'dark' : 'light');
  }

  /** Arrow keys go back and forth in time, unless what has the focus needs them. */
  readonly #keyDown = (event: KeyboardEvent): void => {
    const direction = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    const focus = document.activeElement;
    const needed = focus?.matches('select, textarea, input:not(.candidates-scrub)') ?? false;
    if (direction === undefined || needed || event.ctrlKey || event.altKey || event.metaKey) return;
    if (isDialogOpen()) return;
    event.preventDefault();
    this.#run.step(direction * (event.shiftKey ? LARGE_STEP : STEP));
  };
}
