import type { Parameters } from '../../shared/core/parameters/table.ts';
import { type LoopFigures, startingPoint } from '../../shared/protocol/analysis.ts';
import type { AnalysisClient } from '../clients/analysisClient.ts';
import { RestTimer } from '../ui/timing/restTimer.ts';

/** After the last change, ms: while a slider is dragged, nothing is analysed that nobody can read. */
const REST = 300;

/** Keeps known what the loop on the bench is like with the guide sliding, as every move meets it. */
export class PresentLoop {
  readonly #analysis: AnalysisClient;
  readonly #show: (figures: LoopFigures) => void;
  readonly #timer = new RestTimer(REST, () => void this.#analyse());
  #asked: Parameters | null = null;

  constructor(analysis: AnalysisClient, show: (figures: LoopFigures) => void) {
    this.#analysis = analysis;
    this.#show = show;
  }

  follow(parameters: Parameters): void {
    if (parameters === this.#asked) return;
    this.#asked = parameters;
    this.#timer.touch();
  }

  async #analyse(): Promise<void> {
    const parameters = this.#asked;
    if (!parameters) return;
    try {
      const point = { ...startingPoint(parameters), friction: 'sliding' } as const;
      const { figures } = await this.#analysis.analyse(parameters, point);
      if (parameters === this.#asked) this.#show(figures);
    } catch {
      // An axis that cannot be held has no loop: whoever opens its analysis is told why.
    }
  }
}
