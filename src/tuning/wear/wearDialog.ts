import './wear.css';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { figureText } from '../../../shared/figures/figure.ts';
import { POSITIONING_FIGURES } from '../../../shared/figures/testFigures.ts';
import { tripText } from '../../../shared/figures/tripText.ts';
import type { PositioningTest, TestResult } from '../../../shared/protocol/accuracy.ts';
import type { WearTest } from '../../../shared/protocol/wear.ts';
import { errorText } from '../../clients/errorText.ts';
import { WearClient } from '../../clients/wearClient.ts';
import { positioningChart } from '../../drawings/positioning.ts';
import { drawn } from '../../plot/drawn.ts';
import { Dialog } from '../../ui/dialog.ts';
import { element, setText } from '../../ui/dom.ts';
import { figureTable } from '../../ui/figureTable.ts';
import { changeText, frictionText } from './changeText.ts';
import { wearText } from './wearText.ts';

const SIZE = { width: 450, height: 300 };
const ROWS = ['reversal', 'repeatability', 'systematic', 'accuracy'] as const;

/** The positioning test on the machine of the bench, new and after its kilometres. */
export class WearDialog {
  readonly #client = new WearClient();
  readonly #dialog = new Dialog({
    title: 'Positioning, new and now',
    class: 'wide',
    onClose: () => this.#client.end(),
  });
  readonly #state = element('p', { role: 'status' });
  readonly #results = element('div');

  open(scene: Scene): void {
    setText(this.#state, 'Testing a copy of the new machine and one of the worn machine …');
    this.#results.replaceChildren();
    this.#dialog.fill(
      element('p', {}, wearText(scene)),
      this.#state,
      this.#results,
      element(
        'p',
        { class: 'wear-source' },
        'ISO 230-2, over nine tenths of the travel, every part at room temperature; the drive keeps its gains. The rates of wear are assumptions: enter your own.',
      ),
    );
    this.#dialog.open();
    void this.#run(scene);
  }

  async #run(scene: Scene): Promise<void> {
    try {
      const found = await this.#client.test(scene);
      if (found) this.#show(found, scene.parameters);
    } catch (error) {
      if (this.#dialog.isOpen) setText(this.#state, `Not tested: ${errorText(error)}`);
    }
  }

  #show({ fresh, worn }: WearTest, p: Parameters): void {
    if ('trip' in fresh || 'trip' in worn) {
      const ended = ([name, result]: [string, TestResult<PositioningTest>]) =>
        'trip' in result ? [`${name} drive tripped: ${tripText(result.trip)}`] : [];
      setText(
        this.#state,
        [...ended(['The new machine’s', fresh]), ...ended(['The worn machine’s', worn])].join(' '),
      );
      return;
    }
    setText(this.#state, `${changeText(fresh, worn)} ${frictionText(p, fresh, worn)}`.trim());
    const among = [fresh, worn];
    const chart = (title: string, test: PositioningTest) =>
      element('figure', {}, element('figcaption', {}, title), drawn(positioningChart(test, among, SIZE)));
    const rows = ROWS.map((name) => {
      const { label, definition } = POSITIONING_FIGURES[name];
      const cells = among.map((test) =>
        element('td', { class: 'quantity' }, figureText(POSITIONING_FIGURES[name], test.figures[name])),
      );
      return { head: label, cells: [...cells, element('td', { class: 'meaning' }, definition)] };
    });
    this.#results.replaceChildren(
      element('div', { class: 'wear-charts' }, chart('New', fresh), chart('Now', worn)),
      figureTable({ class: 'dialog-table', columns: ['Figure', 'New', 'Now', 'Meaning'], rows }),
    );
  }
}
