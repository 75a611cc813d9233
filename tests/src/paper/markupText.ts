import { present } from '../../../shared/core/at.ts';

/** Text of a document without its tags, as a reader sees it. */
export function textOf(html: string): string {
  return html
    .replace(/<style>[\s\S]*?<\/style>/, '')
    .replace(/<[^>]+>/g, '')
    .replace(
      /&(amp|lt|gt|quot|#39);/g,
      (_, name: string) => ({ amp: '&', lt: '<', gt: '>', quot: '"' })[name] ?? "'",
    );
}

/** Elements of HTML that have no end. */
const VOID = ['meta', 'br', 'img', 'input'];

/** What is wrong with the nesting of a document; null when every element that is opened is closed in turn. */
export function nestingProblem(html: string): string | null {
  const open: string[] = [];
  for (const [, slash, name, , self] of html.matchAll(/<(\/?)([a-zA-Z][\w]*)((?:"[^"]*"|[^>"])*?)(\/?)>/g)) {
    if (self === '/' || VOID.includes(present(name))) continue;
    if (!slash) open.push(present(name));
    else if (open.pop() !== name) return `</${name}> ends what is not open.`;
  }
  return open.length === 0 ? null : `never ended: ${open.join(', ')}`;
}
