import type { Theme } from '../../plot/canvas/theme.ts';
import type { CurveSpec } from '../../plot/loop/responses.ts';
import type { LoopData } from './loopData.ts';

/** One plot of the loop with a canvas of its own. */
export interface Pane {
  readonly title: string;
  readonly element: HTMLElement;
  /** The curves that need telling apart. */
  readonly legend: readonly CurveSpec[];
  /** Takes on the size that the page has given it. */
  measure(theme: Theme): void;
  draw(data: LoopData, theme: Theme): void;
}
