import type { OperatingPoint } from '../../shared/analysis.ts';
import { linear } from '../../shared/parameters/row.ts';
import { PARAMETERS } from '../../shared/parameters/table.ts';
import { element, setText } from '../app/dom.ts';
import { QuantityInput } from '../panel/quantityInput.ts';
import { FIRST_WISH, type PointWish, pointWords } from './operatingPoint.ts';
import { createPopover } from './popover.ts';

export interface PointForm {
  readonly element: HTMLElement;
  show(point: OperatingPoint): void;
}

const TEMPERATURES = ['as started', 'as now', 'winding at its limit'] as const;
const FRICTIONS = ['sliding', 'presliding'] as const;

const SPEED = linear('', 'mm/s', [-5, 5], 0, 'Speed of the table');

/** Where the loop is looked at: position, speed, temperature, and whether the guide slides. */
export function createPointForm(onWish: (wish: PointWish) => void): PointForm {
  let wish = FIRST_WISH;
  const take = (part: Partial<PointWish>) => {
    wish = { ...wish, ...part };
    friction.disabled = wish.speed !== 0;
    onWish(wish);
  };
  const position = new QuantityInput('Position', PARAMETERS.start, (value) => take({ position: value }), {
    empty: 'where it stands',
  });
  const speed = new QuantityInput('Speed', SPEED, (value) => take({ speed: value ?? 0 }));
  speed.value = 0;
  const [temperatureLabel, temperature] = choice('Temperature', TEMPERATURES, (value) =>
    take({ temperature: value }),
  );
  const [frictionLabel, friction] = choice('Friction', FRICTIONS, (value) => take({ friction: value }));
  const words = element('p', { class: 'loop-words' });
  const { element: root } = createPopover(
    'Point',
    'Operating point: where the loop is looked at',
    ...position.elements,
    ...speed.elements,
    temperatureLabel,
    temperature,
    frictionLabel,
    friction,
    words,
  );
  return {
    element: root,
    show: (point) => setText(words, `${pointWords(point)}.`),
  };
}

function choice<T extends string>(
  words: string,
  options: readonly T[],
  onChoose: (value: T) => void,
): [HTMLLabelElement, HTMLSelectElement] {
  const id = `loop-${words.toLowerCase()}`;
  const select = element(
    'select',
    { id, onchange: () => onChoose(select.value as T) },
    ...options.map((option) => element('option', { value: option }, option)),
  );
  return [element('label', { for: id }, words), select];
}
