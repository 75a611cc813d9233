import { beforeAll, describe, expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { type LoopAnalysis, startingPoint } from '../../../shared/protocol/analysis.ts';
import { type GainSheet, gainSheet } from '../../../shared/sheet/gainSheet.ts';
import { gainSheetHtml } from '../../../src/paper/gainSheet/gainSheetHtml.ts';
import { withIndices } from '../../../src/ui/markup.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { nestingProblem, textOf } from './markupText.ts';

interface Made {
  readonly sheet: GainSheet;
  readonly analysis: LoopAnalysis;
  readonly html: string;
}

function made(changes: ParameterChanges = {}, title = 'Mould shuttle'): Made {
  const scene = DEFAULT_SCENE;
  const parameters = { ...scene.parameters, ...changes };
  const point = { ...startingPoint(parameters), friction: 'sliding' } as const;
  const analysis = analyse(parameters, point);
  const sheet = gainSheet({ ...scene, title, parameters }, { loops: [{ point, figures: analysis.figures }] });
  return { sheet, analysis, html: gainSheetHtml(sheet, analysis, '1 May') };
}

let usual: Made;
beforeAll(() => {
  usual = made({ filter1: 'notch', filter3: 'low-pass' });
});

const plain = (text: string) => text.replace(/(?<=\p{L}\p{M}*)_(?=[\p{L}\d])/gu, '');

describe('the printable sheet', () => {
  it('says everything that the sheet holds: words, set values and every scaling of a gain', () => {
    const text = textOf(usual.html);
    const { sheet } = usual;
    const sentences = [
      ...sheet.warnings,
      ...sheet.cautions,
      ...sheet.assumptions,
      ...sheet.sections.filter(({ id }) => !['filter2', 'filter4'].includes(id)).flatMap(({ text }) => text),
      ...sheet.scaled.map(({ forms }) => at(forms, 1).how),
      ...present(sheet.sections.find(({ id }) => id === 'margins')).rows.map((row) => row.text ?? ''),
    ];
    expect(sentences.length).toBeGreaterThan(50);
    expect(sentences.filter((sentence) => !text.includes(plain(sentence)))).toEqual([]);
  });

  it('leaves out the fields of a filter that is off, but not that it is', () => {
    const text = textOf(usual.html);
    expect(text).toMatch(/Filter 2off/);
    expect(text).not.toContain('Filter 2 frequency');
    expect(text).toContain('Filter 1 frequency');
  });

  it('needs nothing from anywhere, and runs nothing', () => {
    expect(usual.html).not.toMatch(/<script|<link|<img|\bsrc=|\bhref=|https?:|@import|javascript:/i);
  });

  it('shows a title as text, whatever is in it', () => {
    const { html } = made({}, '<script>alert("1")</script> & <b onload=\'x\'>');
    expect(html).not.toMatch(/<script|<b /);
    expect(html).toContain(
      '&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt; &amp; &lt;b onload=&#39;x&#39;&gt;',
    );
  });

  it('closes every element that it opens', () => {
    expect(nestingProblem(usual.html)).toBeNull();
  });

  it('holds no number that is none, even of a loop without gains', () => {
    for (const changes of [
      { Kp: 0, Ki: 0, Kd: 0 },
      { Ki: 1e11 },
      { Kp: 1e8, Kd: 1e5 },
      { encoderResolution: 0 },
    ])
      expect(made(changes).html).not.toMatch(/NaN|Infinity|undefined|null/);
  });

  it('lowers the index of a symbol, with its comma, and nothing else', () => {
    expect(withIndices('K_f,pk is 4, K_p, v̂_max < 2').text).toBe(
      'K<sub>f,pk</sub> is 4, K<sub>p</sub>, v̂<sub>max</sub> &lt; 2',
    );
  });
});

describe('the plots on it', () => {
  it('are described in words for those who do not see them', () => {
    expect(usual.html.match(/<svg[^>]*role="img" aria-label="[^"]{30,}"/g)).toHaveLength(2);
  });
});
