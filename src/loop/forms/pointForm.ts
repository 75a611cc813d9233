import { PARAMETERS } from '../../../shared/core/parameters/table.ts';
import type { OperatingPoint } from '../../../shared/protocol/analysis.ts';
import { element, setText } from '../../ui/dom.ts';
import { QuantityInput } from '../../ui/fields/quantityInput.ts';
import { FRICTIONS, type PointRequest, pointText, SPEED, TEMPERATURES } from './operatingPoint.ts';
import { createPopover } from './popover.ts';

export interface PointForm {
  readonly element: HTMLElement;
  show(point: OperatingPoint): void;
}

/** Where the loop is looked at: position, speed, temperature, and whether the guide slides. */
export function createPointForm(first: PointRequest, onRequest: (request: PointRequest) => void): PointForm {
  let request = first;
  const take = (part: Partial<PointRequest>) => {
    request = { ...request, ...part };
    friction.disabled = request.speed !== 0;
    onRequest(request);
  };
  const position = new QuantityInput('Position', PARAMETERS.start, (value) => take({ position: value }), {
    empty: 'where it stands',
  });
  const speed = new QuantityInput('Speed', SPEED, (value) => take({ speed: value ?? 0 }));
  position.value = request.position;
  speed.value = request.speed;
  const [temperatureLabel, temperature] = choice('Temperature', TEMPERATURES, (value) =>
    take({ temperature: value }),
  );
  const [frictionLabel, friction] = choice('Friction', FRICTIONS, (value) => take({ friction: value }));
  temperature.value = request.temperature;
  friction.value = request.friction;
  friction.disabled = request.speed !== 0;
  const text = element('p', { class: 'loop-words' });
  const { element: root } = createPopover(
    'Point',
    'Operating point: where the loop is looked at',
    ...position.elements,
    ...speed.elements,
    temperatureLabel,
    temperature,
    frictionLabel,
    friction,
    text,
  );
  return {
    element: root,
    show: (point) => setText(text, `${pointText(point)}.`),
  };
}

function choice<T extends string>(
  text: string,
  options: readonly T[],
  onChoose: (value: T) => void,
): [HTMLLabelElement, HTMLSelectElement] {
  const id = `loop-${text.toLowerCase()}`;
  const select = element(
    'select',
    { id, onchange: () => onChoose(select.value as T) },
    ...options.map((option) => element('option', { value: option }, option)),
  );
  return [element('label', { for: id }, text), select];
}
