import { Markup, markup } from '../ui/markup.ts';

/** A document of its own, style inside, to print, to save or to show: it needs nothing from anywhere. `style` is ours and trusted. */
export function paperPage(title: string, style: string, content: Markup): string {
  const { text } = markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>${new Markup(style)}</style>
</head>
<body>
<main>
${content}
</main>
</body>
</html>
`;
  return text;
}
