import { PARAMETERS } from '../../../shared/core/parameters/table.ts';
import type { OperatingPoint } from '../../../shared/protocol/analysis.ts';
import { element, setText } from '../../ui/dom.ts';
import { Field } from '../../ui/fields/field.ts';
import { FRICTION, type PointRequest, pointText, SPEED, TEMPERATURE } from './operatingPoint.ts';
import { createPopover } from './popover.ts';

interface PointForm {
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
  const position = new Field<number | null>(PARAMETERS.start, {
    id: 'loop-position',
    label: 'Position',
    empty: 'present position',
    onValue: (value) => take({ position: value }),
  });
  const speed = new Field<number>(SPEED, {
    id: 'loop-speed',
    label: 'Speed',
    onValue: (value) => take({ speed: value }),
  });
  position.show(request.position);
  speed.show(request.speed);
  const temperature = new Field<PointRequest['temperature']>(TEMPERATURE, {
    id: 'loop-temperature',
    label: 'Temperature',
    onValue: (value) => take({ temperature: value }),
  });
  const friction = new Field<PointRequest['friction']>(FRICTION, {
    id: 'loop-friction',
    label: 'Friction',
    onValue: (value) => take({ friction: value }),
  });
  temperature.show(request.temperature);
  friction.show(request.friction);
  friction.disabled = request.speed !== 0;
  const text = element('p', { class: 'loop-words' });
  const { element: root } = createPopover(
    'Point',
    'Operating point of the analysis',
    position.element,
    speed.element,
    temperature.element,
    friction.element,
    text,
  );
  return {
    element: root,
    show: (point) => setText(text, `${pointText(point)}.`),
  };
}
