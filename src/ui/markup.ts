import { at } from '../../shared/core/at.ts';

/** A piece of HTML or SVG in which every text that is not ours has been escaped. */
export class Markup {
  constructor(readonly text: string) {}
}

type Part = string | number | Markup | readonly Markup[];

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Markup from a template; texts and numbers put into it are escaped, markup is not. */
export function markup(strings: TemplateStringsArray, ...parts: readonly Part[]): Markup {
  return new Markup(strings.map((string, k) => (k === 0 ? '' : written(at(parts, k - 1))) + string).join(''));
}

function written(part: Part): string {
  if (part instanceof Markup) return part.text;
  if (Array.isArray(part)) return part.map((each: Markup) => each.text).join('');
  return String(part).replace(/[&<>"']/g, (character) => ESCAPES[character] ?? '');
}

/** Symbols of a text with their indices lowered: K_f,pk is K with f,pk below. */
export function withIndices(text: string): Markup {
  const parts = text.split(/(?<=\p{L}\p{M}*)_([\p{L}\d]+(?:,\p{L}+)*)/u);
  return new Markup(
    parts.map((part, k) => (k % 2 === 0 ? markup`${part}` : markup`<sub>${part}</sub>`).text).join(''),
  );
}
