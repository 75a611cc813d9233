import type { Drawing } from '../../plot/drawing.ts';
import { svg } from '../../plot/svg.ts';
import { candidateName } from '../../sideBySide/candidateName.ts';
import { type Markup, markup } from '../../ui/markup.ts';

/** A chart of one candidate under its name, or why there is none. */
export function candidateFigure(
  candidate: { readonly letter: string; readonly title: string },
  content: Drawing | string,
): Markup {
  const shown = typeof content === 'string' ? markup`<p>${content}</p>` : svg(content);
  return markup`<figure><figcaption>${candidateName(candidate)}</figcaption>${shown}</figure>`;
}
