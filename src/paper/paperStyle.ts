const FONT =
  'system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", Arial, sans-serif';

/**
 * Of a page to be printed, which is a document of its own: black on white, A4 or letter, whatever theme the page that made it has.
 * 14 px on a screen; 9.5 pt on paper. `footer` stands at the bottom of every sheet; plain words without quotes.
 */
export function paperStyle(footer: string): string {
  return `
:root { color-scheme: light; font-size: 14px; }
* { box-sizing: border-box; }
body {
  max-width: 59rem;
  margin: 0 auto;
  padding: 1.7rem 1.4rem 3rem;
  background: #fff;
  color: #000;
  font: 1rem/1.35 ${FONT};
  font-feature-settings: "tnum" 1, "lnum" 1;
}
h1, h2, h3, p, ul, dl, dd, table, figure { margin: 0; }
h1 { font-size: 1.7rem; line-height: 1.2; }
h2 { margin: 1.5rem 0 0.4rem; padding-bottom: 0.1rem; border-bottom: 2px solid #000; font-size: 1.2rem; break-after: avoid; }
p + p { margin-top: 0.2rem; }
sub { font-size: 0.8em; line-height: 0; vertical-align: -0.25em; }
.title { margin: 0.15rem 0; font-size: 1.2rem; }
.made { display: flex; justify-content: space-between; gap: 1rem; margin-bottom: 0.8rem; }
ul { padding-left: 1.4rem; }
li + li { margin-top: 0.2rem; }
.box { margin-top: 0.7rem; padding: 0.5rem 0.8rem; border: 1px solid #000; break-inside: avoid; }
.box h2 { margin: 0 0 0.3rem; padding: 0; border: 0; }
.warning { border-width: 3px; font-weight: 600; }
.words { margin-bottom: 0.5rem; break-after: avoid; break-inside: avoid; }
table { width: 100%; border-collapse: collapse; }
th, td { padding: 0.2rem 0.6rem 0.2rem 0; border-bottom: 1px solid #b5b5b5; text-align: left; vertical-align: baseline; }
th { font-weight: 600; }
thead th { border-bottom: 1px solid #000; }
tbody th { font-weight: 400; }
tr { break-inside: avoid; }
:is(.quantities, .figures) tbody tr:nth-child(-n + 3) { break-after: avoid; }
.value { font-weight: 600; overflow-wrap: break-word; }
.quantities, .figures { table-layout: fixed; }
.quantities :is(th, td):nth-child(1) { width: 25%; }
.quantities :is(th, td):nth-child(2) { width: 9%; }
.quantities :is(th, td):nth-child(3) { width: 23%; }
.figures :is(th, td):nth-child(1) { width: 21%; }
.figures :is(th, td):nth-child(2) { width: 20%; }
.together { break-inside: avoid; }
:not(svg) > svg { display: block; width: 92%; height: auto; margin: 0 auto; }
figure { margin-top: 0.7rem; break-inside: avoid; }
figcaption { margin-bottom: 0.15rem; font-weight: 600; }
svg text { font: 15px ${FONT}; fill: #000; }
@page {
  margin: 13mm 14mm 16mm;
  @bottom-left { content: "${footer}"; font: 9.5pt sans-serif; }
  @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 9.5pt sans-serif; }
}
@media print {
  :root { font-size: 9.5pt; }
  body { max-width: none; padding: 0; }
}
`;
}
