import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import { readStudy } from '../../../shared/files/studyFile.ts';
import type { JobValues } from '../../../shared/study/job.ts';
import { jobSentence } from '../../../shared/study/jobSentence.ts';
import type { Verdict } from '../../../shared/verdict/judgement.ts';
import { verdict } from '../../../shared/verdict/verdict.ts';
import { reportHtml } from '../../../src/paper/report/reportHtml.ts';
import type { ReportInput } from '../../../src/paper/report/reportInput.ts';
import { isSimulated } from '../../../src/studyState/simulatedCandidate.ts';
import type { CandidateState } from '../../../src/studyState/state.ts';
import { CAUTIONS } from '../../../src/ui/cautions.ts';
import { recordedJob } from '../../shared/study/recordedStudy.ts';
import { nestingProblem, textOf } from './markupText.ts';
import { PIXEL, sampleReport } from './sampleReport.ts';

const usual = sampleReport();
const html = reportHtml(usual);
const text = textOf(html);

/** With the index of a symbol lowered there is no underscore left. */
const plain = (label: string) => label.replace(/(?<=\p{L}\p{M}*)_(?=[\p{L}\d])/gu, '');

function withJob(changes: Partial<JobValues>, input: Partial<ReportInput> = {}): string {
  return reportHtml(sampleReport(input, recordedJob(changes)));
}

describe('the report of a study', () => {
  it('closes every element that it opens, and gives no id twice', () => {
    expect(nestingProblem(html)).toBeNull();
    const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('has its parts in the order in which they are read', () => {
    const heads = [...html.matchAll(/<h[12]>([^<]*)<\/h[12]>/g)].map(([, label]) => label);
    expect(heads).toEqual([
      'Which drive?',
      'Summary',
      'The job',
      'How the choice is made',
      'The candidates side by side',
      'Key differences',
      'What would change the answer',
      'Speed ripple of the scan',
      'Heat over a day',
      'The drives and their data',
      CAUTIONS.title,
      'How to get these figures again',
      'Appendix',
      'Sizing by calculation',
      'Tuning',
      ...usual.candidates.map(({ letter, title }) => `Candidate ${letter}: ${title}`),
      'Assumptions',
    ]);
    expect(html.indexOf(PIXEL)).toBeGreaterThan(html.indexOf('<h2>Summary'));
    expect(html.indexOf(PIXEL)).toBeLessThan(html.indexOf('<h2>The job'));
  });

  it('has calculations and tests of each candidate in an appendix that is shown and printed on request', () => {
    expect(html).toMatch(/<input type="checkbox" id="with-appendix">/);
    expect(html).toMatch(/\.appendix \{ display: none; \}/);
    expect(html).toMatch(/body:has\(#with-appendix:checked\) \.appendix \{ display: block;/);
    const [body, appendix] = html.split('<div class="appendix">');
    for (const { letter } of usual.candidates) {
      expect(present(body)).not.toContain(`<h2>Candidate ${letter}`);
      expect(present(appendix)).toContain(`<h2>Candidate ${letter}`);
    }
  });

  it('states data of a drive as a datasheet does: in words, and to four digits', () => {
    const data = present(/<h2>The drives and their data<\/h2>([\s\S]*?)<\/section>/.exec(html)?.[1]);
    expect(data).toContain('coil around a magnet shaft');
    expect(data).not.toMatch(/bessel|cosh/);
    const digits = [...data.matchAll(/<td[^>]*>\s*(?:<[^>]*>)*−?([\d.]+)/g)].map(([, number]) =>
      present(number).replace('.', '').replace(/^0+/, ''),
    );
    expect(digits.length).toBeGreaterThan(100);
    expect(digits.filter((each) => each.replace(/0+$/, '').length > 4)).toEqual([]);
  });

  it('shows the speed ripple of all on one scale where the job asks for a scan, and not otherwise', () => {
    const ripples = present(/<h2>Speed ripple of the scan<\/h2>([\s\S]*?)<\/section>/.exec(html)?.[1]);
    expect(ripples.match(/<figure/g)).toHaveLength(usual.candidates.length);
    expect(withJob({ rippleLimit: 0 })).not.toContain('Speed ripple of the scan</h2>');
  });

  it('says all that the verdict says', () => {
    const { rows, choice, rule, fairness, sentences, flips, flipNote } = usual.verdict;
    const said = [
      choice,
      rule,
      fairness,
      flipNote,
      ...sentences,
      ...flips.map(({ sentence }) => sentence),
      ...rows.flatMap(({ label, definition, cells }) => [
        label,
        definition,
        ...cells.map((cell) => cell.text),
      ]),
    ];
    expect(said.length).toBeGreaterThan(40);
    expect(said.filter((label) => !text.includes(plain(label)))).toEqual([]);
  });

  it('says of each candidate every figure of the sizing with its formula and its numbers', () => {
    const said = usual.candidates.flatMap(({ sizing }) =>
      sizing.figures.flatMap(({ label, formula, numbers, note }) => [label, formula, numbers, note]),
    );
    expect(said.length).toBeGreaterThan(8);
    expect(said.filter((label) => !text.includes(plain(label)))).toEqual([]);
  });

  it('draws every chart of every candidate, each described in words', () => {
    const [, ...candidates] = html.split('<section class="candidate">');
    expect(candidates).toHaveLength(usual.candidates.length);
    for (const [k, candidate] of candidates.entries()) {
      const titles = [...candidate.matchAll(/<figcaption>([^<]*)<\/figcaption>/g)].map(([, title]) => title);
      const states = present(at(usual.candidates, k).outcome).accuracy.positioning.length;
      expect(titles.filter((title) => present(title).startsWith('Deviation from the targets'))).toHaveLength(
        states,
      );
      expect(titles).toEqual(
        expect.arrayContaining([
          'Force against speed',
          'Temperatures over the duty',
          'Speed ripple along the way',
          'Spectrum of the speed ripple',
          'Stairs set and taken',
          'Steps set and taken',
          'Deviation under the force',
          'Where the energy of a cycle goes',
        ]),
      );
    }
    const drawings = present(html.match(/<figcaption>/g)).length - 1;
    expect(html.match(/<svg[^>]*role="img" aria-label="[^"]{20,}"/g)).toHaveLength(drawings);
  });

  it('needs nothing from anywhere, and runs nothing', () => {
    expect(html).not.toMatch(/<script|<link|<iframe|<base|@import|javascript:|\son\w+=/i);
    const sources = [...html.matchAll(/(?:\bsrc|srcset|url\()\s*=?\s*["']?([^"')\s]+)/gi)].map(([, url]) =>
      present(url),
    );
    expect(sources.filter((url) => !url.startsWith('data:'))).toEqual([]);
    // The one address is that of the study, and it is followed only by whoever clicks on it.
    const links = [...html.matchAll(/href="([^"]+)"/g)].map(([, url]) => present(url));
    expect(links.filter((url) => !url.startsWith('data:application/json'))).toEqual([
      usual.link.replaceAll('&', '&amp;'),
    ]);
  });

  it('has the colours of the drawings with it', () => {
    // Grid and text have the colours of paper instead.
    const used = new Set([...html.matchAll(/var\((--q-[\w-]+)/g)].map(([, name]) => present(name)));
    expect(used.size).toBeGreaterThan(5);
    for (const name of used) expect(html).toContain(`${name}: #`);
  });

  it('opens with one page: the job, the choice, three reasons, and bars as long as the figures beside them', () => {
    const summary = present(/<section class="summary">([\s\S]*?)<\/section>/.exec(html)?.[1]);
    const verdict = usual.verdict;
    expect(textOf(summary)).toContain(verdict.choice);
    expect(present(/<\/div>\s*<ul>([\s\S]*?)<\/ul>/.exec(summary)?.[1]).match(/<li>/g)).toHaveLength(3);
    const energy = present(verdict.rows.find(({ id }) => id === 'total'));
    const values = energy.cells.map(({ value }) => value ?? 0);
    const drawn = present(new RegExp(`${energy.label}</caption>([\\s\\S]*?)</table>`).exec(summary)?.[1]);
    const widths = [...drawn.matchAll(/rect width="([\d.]+)"/g)].map(([, width]) => Number(width));
    values.forEach((value, k) => {
      expect(widths[k]).toBeCloseTo((100 * value) / Math.max(...values), 1);
    });
  });

  it('shows a title as text, whatever is in it', () => {
    const title = '</title><script>alert("1")</script> & <b onload=\'x\'>';
    const job = { ...recordedJob(), title };
    const hostile = reportHtml(sampleReport({}, job));
    expect(hostile).not.toMatch(/<script|<b /);
    expect(nestingProblem(hostile)).toBeNull();
    expect(textOf(hostile)).toContain(title);
  });

  it('holds no number that is none', () => {
    expect(html.replace(/<pre>[\s\S]*<\/pre>|href="data:[^"]*"/g, '')).not.toMatch(
      /NaN|Infinity|undefined|null/,
    );
  });
});

describe('the study inside', () => {
  it('reads back as the study, from the link to save it and from the text', () => {
    const [, data] = present(/href="data:application\/json;charset=utf-8,([^"]*)" download="/.exec(html));
    const [, shown] = present(/<pre>([\s\S]*?)<\/pre>/.exec(html));
    for (const file of [decodeURIComponent(textOf(present(data))), textOf(present(shown))])
      expect(readStudy(file, PRESETS)).toEqual({ study: usual.study });
  });

  it('has an address that is one', () => {
    for (const link of ['javascript:alert(1)', 'data:text/html,x', 'blob:https://a/b'])
      expect(() => reportHtml({ ...usual, link })).toThrow(/^link: .*Allowed: http/);
    expect(reportHtml({ ...usual, link: './#study=1' })).toContain('href="./#study=1"');
  });

  it('takes pictures only that are inside', () => {
    for (const stage of [
      'https://example.org/a.png',
      'data:text/html;base64,AA==',
      'data:image/png;base64,"x',
    ])
      expect(() => reportHtml({ ...usual, pictures: { stage } })).toThrow(
        /^pictures\.stage: .*Allowed: a data URL/,
      );
    expect(reportHtml({ ...usual, pictures: {} })).not.toContain('<img');
  });
});

describe('the job', () => {
  it('is said back in sentences', () => {
    expect(text).toContain(jobSentence(usual.study.job, 'metric'));
  });

  it('lists what applies and nothing else', () => {
    expect(text).not.toContain('Counterbalanced');
    expect(text).not.toContain('Process forceF');
    const upright = textOf(
      withJob({ inclination: 1, counterbalanced: 0.5, process: 'constant', processForce: 30 }),
    );
    expect(upright).toMatch(/Counterbalanced50 %/);
    expect(upright).toMatch(/Process forceF30 N/);
    expect(upright).not.toContain('Length of a pulse');
  });

  it('is in inches and pounds for readers of them', () => {
    // 10 in and 11 lb: 254 mm, 4.98952 kg (NIST SP 811).
    const inches = textOf(withJob({ stroke: 0.254, payload: 11 * 0.45359237 }, { units: 'inch' }));
    expect(inches).toMatch(/10 in(?! \()/);
    expect(inches).toMatch(/11 lb(?! \()/);
  });

  it('lists the moves of a move list', () => {
    const job = {
      ...recordedJob({ motion: 'move list' }),
      moves: [{ to: 0.0123, speed: 0.5, acceleration: 7, jerk: 300, dwell: 0.25 }],
    };
    const listed = textOf(reportHtml(sampleReport({}, job)));
    expect(listed).toMatch(/12\.3 mm\s*0\.5 m\/s\s*7 m\/s²\s*300 m\/s³\s*250 ms/);
  });
});

describe('the table of the candidates', () => {
  it('marks by words what is best, what shares it, and what does not do', () => {
    const cells = [
      { value: 1, text: '1.00 s', cause: null, mark: 'best', fails: false, reason: null },
      { value: 2, text: '2.00 s', cause: 'from cogging', mark: 'tie', fails: false, reason: null },
      { value: null, text: 'none', cause: null, mark: null, fails: true, reason: 'too slow' },
      { value: 3, text: '3.00 s', cause: null, mark: null, fails: false, reason: null },
    ] as const;
    const row = {
      id: 'x',
      group: 'throughput',
      label: 'Time',
      unit: 's',
      better: 'less',
      definition: 'What it takes.',
      asked: 'within 2 s',
      cells,
    } as const;
    const verdict: Verdict = { ...usual.verdict, rows: [row] };
    const shown = textOf(reportHtml({ ...usual, verdict }));
    expect(shown).toMatch(
      /Time\s*asked: within 2 s\s*1\.00 s\s*best\s*2\.00 s\s*joint best\s*from cogging\s*none\s*fails\s*3\.00 s/,
    );
  });
});

describe('a candidate', () => {
  function withCandidate(change: (candidate: CandidateState) => CandidateState): string {
    const [first, ...others] = usual.candidates;
    const candidates = [change(present(first)), ...others];
    const judged = verdict(usual.study.job, candidates.filter(isSimulated), PRESETS);
    return reportHtml({ ...usual, candidates, verdict: judged });
  }

  it('that tripped says why, instead of figures', () => {
    const trip = { kind: 'over-travel', time: 1, side: 'upper', limit: 0.2 } as const;
    const shown = withCandidate((candidate) => ({
      ...candidate,
      outcome: {
        ...present(candidate.outcome),
        accuracy: {
          positioning: [{ trip }],
          staircase: { trip },
          ripple: { trip },
          increment: { trip },
          disturbance: { trip },
          energy: { trip },
        },
        heat: {
          ...present(candidate.outcome).heat,
          asSet: { ...present(candidate.outcome).heat.asSet, trip, steady: null },
        },
      },
    }));
    expect(nestingProblem(shown)).toBeNull();
    expect(
      textOf(shown).match(/the drive tripped[:.] The table passed the upper travel limit at 200 mm\./g),
    ).toHaveLength(7);
    expect(textOf(shown)).toContain('does not last the day');
    // The page to hand over has room for one reason, and compares with nothing that is out.
    const summary = textOf(present(/<section class="summary">([\s\S]*?)<\/section>/.exec(shown)?.[1]));
    expect(summary).toMatch(/A \([^)]*\) does not do the job\. [^.]+\. The report gives \d+ more reasons?\./);
    expect(summary).not.toContain('Against A (');
  });

  it('that was not simulated says so, with what can be calculated of it', () => {
    const shown = withCandidate((candidate) => ({
      ...candidate,
      outcome: null,
      error: 'No gains were found.',
    }));
    expect(textOf(shown)).toContain('This candidate was not simulated. No gains were found.');
    const [, candidate] = shown.split('<section class="candidate">');
    expect(candidate).toContain('Force against speed');
    expect(candidate).not.toContain('Temperatures over the duty');
  });

  it('tells values that were typed in', () => {
    const shown = textOf(
      withCandidate((candidate) => ({
        ...candidate,
        choice: { ...candidate.choice, own: { forceConstant: 61 } },
      })),
    );
    expect(shown).toContain('1 value typed in, the others those of an invented demonstration preset');
    expect(shown).toMatch(/Force constant Kf60 N\/A \(typed in\)63 N\/A72 N\/A/);
  });

  it('has the cost of a year from the mean power of the day', () => {
    // 8 h on 250 days at 0.25 per kWh: 0.5 per year and watt.
    const [candidate] = usual.candidates;
    const samples = candidate?.outcome?.heat.asSet.samples ?? [];
    let [energy, time] = [0, 0];
    for (const [k, sample] of samples.slice(1).entries()) {
      const before = samples[k] ?? sample;
      energy += ((before.electricPower + sample.electricPower) / 2) * (sample.time - before.time);
      time = sample.time;
    }
    const [, cost] = /Energy cost per year\s*([\d.]+)/.exec(text) ?? [];
    expect(Number(cost)).toBeCloseTo((0.5 * energy) / time, 1);
  });
});
