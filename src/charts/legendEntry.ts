import { CHANNELS } from '../../shared/core/channels.ts';
import { element, setText } from '../ui/dom.ts';
import { DASHES, type Trace } from './rows.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** Name, line sample and value of one line; pressing it shows or hides the line. */
export class LegendEntry {
  readonly item: HTMLLIElement;
  private readonly button: HTMLButtonElement;
  private readonly value = element('span', { class: 'charts-value' });

  constructor(trace: Trace, ontoggle: (shown: boolean) => void) {
    const { label } = CHANNELS[trace.channel];
    this.button = element(
      'button',
      {
        type: 'button',
        'aria-pressed': 'true',
        title: `${label}: show or hide`,
        onclick: () => ontoggle(this.toggle()),
      },
      lineSample(trace),
      element('span', { class: 'charts-name' }, trace.name),
      this.value,
    );
    this.item = element('li', {}, this.button);
  }

  setValue(text: string): void {
    setText(this.value, text);
  }

  private toggle(): boolean {
    const shown = this.button.getAttribute('aria-pressed') !== 'true';
    this.button.setAttribute('aria-pressed', String(shown));
    return shown;
  }
}

function lineSample({ quantity, dash, width }: Trace): SVGElement {
  const svg = document.createElementNS(SVG, 'svg');
  svg.setAttribute('viewBox', '0 0 28 10');
  svg.setAttribute('aria-hidden', 'true');
  const line = document.createElementNS(SVG, 'path');
  line.setAttribute('d', 'M0 5H28');
  line.style.stroke = `var(--q-${quantity})`;
  line.style.strokeWidth = String(width);
  line.style.strokeDasharray = DASHES[dash].join(' ');
  svg.append(line);
  return svg;
}
