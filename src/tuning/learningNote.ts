import { ranged } from '../../shared/core/format.ts';
import { type LearnedMove, makesLearnedMove } from '../../shared/core/learnedMove.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { button, element, setHidden, setText } from '../ui/dom.ts';
import { curvePoints } from './curvePoints.ts';

const WIDTH = 300;
const HEIGHT = 90;

export interface LearningActions {
  /** Repeats the move on a copy of the machine and puts the force that it learns on the bench. */
  learnMove(): void;
  forgetMove(): void;
}

/** What was learned for the repeated move: error of each repeat, the error before and after, and a way to remove it. */
export class LearningNote {
  readonly element: HTMLElement;
  readonly #text = element('p');
  readonly #curve = element('div', { class: 'cogging-curve' });
  readonly #remove: HTMLButtonElement;
  #shown: LearnedMove | undefined;

  constructor({ learnMove, forgetMove }: LearningActions) {
    this.#remove = button('Remove what was learned', forgetMove, { class: 'panel-wide' });
    this.element = element(
      'section',
      { class: 'shaping-note', 'aria-label': 'Learned move' },
      this.#text,
      this.#curve,
      button('Learn the move', learnMove, {
        class: 'panel-wide',
        title:
          'Repeats the move on a copy of the axis, and learns a force over time from its following error',
      }),
      this.#remove,
    );
  }

  show(learned: LearnedMove | undefined, p: Parameters): void {
    setText(this.#text, learningText(learned, p));
    for (const part of [this.#remove, this.#curve]) setHidden(part, !learned);
    if (learned && learned !== this.#shown) this.#curve.innerHTML = learningCurve(learned);
    this.#shown = learned;
  }
}

/** 'Peak error of each repeat: 46.8 µm, 3.6 µm, …. Bandwidth 30 Hz. …' */
export function learningText(learned: LearnedMove | undefined, p: Parameters): string {
  if (!learned?.course) return 'Nothing has been learned for a repeated move.';
  const { peaks, rms, worstRate, worstFrequency, bandwidth } = learned.course;
  const list = (values: readonly number[]) => values.map((value) => ranged(value, 'm')).join(', ');
  const other = makesLearnedMove(learned, p)
    ? ''
    : ' The move has changed since: the learned force is not applied. Learn it again.';
  return `Peak error of each repeat: ${list(peaks)}. RMS: ${list(rms)}. Learned up to ${ranged(bandwidth, 'Hz')}; largest |Q (1 − L G)| ${worstRate.toFixed(2)} at ${ranged(worstFrequency, 'Hz')}, below 1: it converges. Not kept in files or links.${other}`;
}

/** Following error over the cycle before (faint) and after. */
function learningCurve({ course }: LearnedMove): string {
  if (!course) return '';
  const peak = course.peaks[0] ?? 0;
  const line = (values: Float64Array, opacity: number) =>
    `<polyline opacity="${opacity}" points="${curvePoints(values, peak, WIDTH, HEIGHT)}"/>`;
  return (
    `<svg viewBox="0 0 ${WIDTH} ${HEIGHT}" preserveAspectRatio="none" role="img" aria-label="Following error over the cycle, before (faint) and after learning">` +
    `${line(course.before, 0.4)}${line(course.after, 1)}</svg>`
  );
}
