import type { Size } from './frame.ts';
import type { Mark } from './marks.ts';

/** A chart of its own, ready to be painted. */
export interface Drawing {
  readonly size: Size;
  /** What it shows, as text, for those who cannot see it. */
  readonly description: string;
  readonly marks: readonly Mark[];
}

/** The description ends with whatever the chart itself has to say about its values. */
export function drawing(size: Size, description: string, marks: readonly Mark[]): Drawing {
  const remarks = marks.flatMap((mark) => (mark.kind === 'label' && mark.isRemark ? [`${mark.text}.`] : []));
  return { size, description: [description, ...remarks].join(' '), marks };
}
