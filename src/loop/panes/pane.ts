import type { Theme } from '../../plot/canvas/theme.ts';
import type { LoopChartData } from '../../plot/loop/loopData.ts';
import type { ResponseSpec } from '../../plot/loop/responses.ts';

/** One plot of the loop with a canvas of its own. */
export interface Pane {
  readonly title: string;
  readonly element: HTMLElement;
  /** The curves that need telling apart. */
  readonly legend: readonly ResponseSpec[];
  /** Takes on the size that the page has given it. */
  measure(theme: Theme): void;
  /** Draws the loop; null: there is none yet. */
  draw(data: LoopChartData | null, theme: Theme): void;
}
