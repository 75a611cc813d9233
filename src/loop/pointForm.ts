import type { OperatingPoint } from '../../shared/analysis.ts';
import { PARAMETERS } from '../../shared/parameters/table.ts';
import { element, setText } from '../app/dom.ts';
import { QuantityInput } from '../panel/quantityInput.ts';
import { FRICTIONS, type PointWish, pointWords, SPEED, TEMPERATURES } from './operatingPoint.ts';
import { createPopover } from './popover.ts';

export interface PointForm {
  readonly element: HTMLElement;
  show(point: OperatingPoint): void;
}

/** Where the loop is looked at: position, speed, temperature, and whether the guide slides. */
export function createPointForm(first: PointWish, onWish: (wish: PointWish) => void): PointForm {
  let wish = first;
  const take = (part: Partial<PointWish>) => {
    wish = { ...wish, ...part };
    friction.disabled = wish.speed !== 0;
    onWish(wish);
  };
  const position = new QuantityInput('Position', PARAMETERS.start, (value) => take({ position: value }), {
    empty: 'where it stands',
  });
  const speed = new QuantityInput('Speed', SPEED, (value) => take({ speed: value ?? 0 }));
  position.value = wish.position;
  speed.value = wish.speed;
  const [temperatureLabel, temperature] = choice('Temperature', TEMPERATURES, (value) =>
    take({ temperature: value }),
  );
  const [frictionLabel, friction] = choice('Friction', FRICTIONS, (value) => take({ friction: value }));
  temperature.value = wish.temperature;
  friction.value = wish.friction;
  friction.disabled = wish.speed !== 0;
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
