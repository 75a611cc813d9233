import { describe, expect, test } from 'vitest';
import { SHELF } from '../../../../scenes/index.ts';
import { problemTexts } from '../../../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../../../shared/core/sentence.ts';
import { readLesson } from '../../../../shared/files/lesson/lessonFile.ts';

const measure = { id: 'error', of: 'alone', move: 'peakError' };

const step = (entries: object = {}) => ({
  title: 'A step',
  text: 'What is seen.',
  scene: 'mould-shuttle',
  run: { seconds: 1 },
  measures: [measure],
  answer: { text: 'It moves.', claims: [{ measure: 'error', is: 'more than', than: 0 }] },
  ...entries,
});

const file = (entries: object = {}) => ({
  waybench: 'lesson',
  version: 1,
  title: 'A lesson',
  aim: 'Something is known.',
  steps: [step()],
  ...entries,
});

const texts = (input: unknown) => {
  const read = readLesson(input, SHELF);
  return 'problems' in read ? problemTexts(read.problems, AS_WRITTEN) : [];
};

test('a lesson of the least that is needed is complete', () => {
  expect(readLesson(JSON.stringify(file()), SHELF)).toMatchObject({
    lesson: {
      notes: [],
      steps: [
        {
          notes: '',
          scene: { id: 'mould-shuttle' },
          view: { cutaway: 'closed', area: 'motion', window: null, camera: { turn: 0, rise: 0, closer: 1 } },
          pointAt: [],
          question: null,
          run: { seconds: 1, pace: 1, hand: [], changes: [] },
          answer: { claims: [{ measure: 'error', is: 'more than', times: 1, than: 0 }], notShown: '' },
        },
      ],
    },
  });
});

test('the changes of a step lie over its scene', () => {
  const read = readLesson(file({ steps: [step({ parameters: { payload: 6 } })] }), SHELF);
  expect(read).toMatchObject({
    lesson: { steps: [{ scene: { parameters: { payload: 6, stroke: 0.25 } } }] },
  });
});

test('a scene may be whole', () => {
  const scene = { waybench: 'scene', version: 3, title: 'Own', preset: 'flat', parameters: { stroke: 0.1 } };
  const read = readLesson(file({ steps: [step({ scene })] }), SHELF);
  expect(read).toMatchObject({ lesson: { steps: [{ scene: { id: null, driveType: 'flat' } }] } });
});

test('a claim may quote an earlier step', () => {
  const claims = [{ measure: 'later', is: 'less than', times: 2, than: 'error' }];
  const later = step({ measures: [{ ...measure, id: 'later' }], answer: { text: 'So.', claims } });
  expect(texts(file({ steps: [step(), later] }))).toEqual([]);
});

describe('a bad lesson is refused with the place and what to do', () => {
  const question = { text: 'What?', answers: ['This', 'That'], right: 0 };
  const claim = (entries: object) =>
    step({ answer: { text: 'So.', claims: [{ measure: 'error', is: 'more than', than: 0, ...entries }] } });
  test.each<[string, unknown, RegExp]>([
    ['a scene file', { ...file(), waybench: 'scene' }, /^This is not a lesson file/],
    ['no steps', file({ steps: [] }), /^steps: it has 0 entries\. Give 1 to 20\.$/],
    ['no aim', file({ aim: undefined }), /^aim: it is missing\. Enter one line of text\.$/],
    ['stray entry', file({ notess: [] }), /^"notess" is not an entry here\. Did you mean "notes"\?$/],
    [
      'stray entry of a step',
      file({ steps: [step({ runn: {} })] }),
      /^steps\[0\]: "runn" is not .* "run"\?$/,
    ],
    ['step that is text', file({ steps: ['one'] }), /^steps\[0\]: "one" is not an object\.$/],
    [
      'unknown scene',
      file({ steps: [step({ scene: 'mould-shuttel' })] }),
      /^steps\[0\]\.scene: "mould-shuttel" is not a scene of the shelf\. Did you mean "mould-shuttle"\? Give one of mould-shuttle, /,
    ],
    [
      'parameter out of range',
      file({ steps: [step({ parameters: { payload: -1 } })] }),
      /^steps\[0\]: parameters: payload: −1 kg is outside .* Enter 0 \(off\), or at least 0\.01 kg\.$/,
    ],
    [
      'run too long',
      file({ steps: [step({ run: { seconds: 900 } })] }),
      /^steps\[0\]\.run\.seconds: 900 s is outside .* Enter at most 120 s\.$/,
    ],
    [
      'hand that goes back in time',
      file({
        steps: [
          step({
            run: {
              seconds: 1,
              hand: [
                { time: 0.5, to: 0 },
                { time: 0.2, to: null },
              ],
            },
          }),
        ],
      }),
      /^steps\[0\]\.run\.hand\[1\]\.time: 0\.2 s is outside 0\.5 s to 1 s\./,
    ],
    [
      'change that needs a restart',
      file({
        steps: [step({ run: { seconds: 1, changes: [{ time: 0.5, parameters: { motorCount: 2 } }] } })],
      }),
      /^steps\[0\]\.run\.changes\[0\]\.parameters: motorCount cannot change while the axis runs\. Set it in the scene\.$/,
    ],
    [
      'one answer',
      file({ steps: [step({ question: { ...question, answers: ['This'] } })] }),
      /^steps\[0\]\.question\.answers: it has 1 entries\. Give 2 to 4\.$/,
    ],
    [
      'right answer that is none',
      file({ steps: [step({ question: { ...question, right: 2 } })] }),
      /^steps\[0\]\.question\.right: 2 is outside 0 to 1\./,
    ],
    [
      'place that is none',
      file({ steps: [step({ pointAt: [{ gauge: 'Curent' }] })] }),
      /^steps\[0\]\.pointAt\[0\]\.gauge: "Curent" is not one of .* Did you mean "Current"\?/,
    ],
    [
      'two measures of a name',
      file({ steps: [step(), step()] }),
      /^steps\[1\]\.measures\[0\]\.id: "error" is the name of another/,
    ],
    [
      'measure of nothing',
      file({ steps: [step({ measures: [{ id: 'error' }] })] }),
      /^steps\[0\]\.measures\[0\]\.id: it does not say what it measures\. Give "move", /,
    ],
    [
      'measure without a run',
      file({ steps: [step({ run: undefined })] }),
      /^steps\[0\]\.measures\[0\]\.id: the step has no run to measure\./,
    ],
    [
      'unknown figure',
      file({ steps: [step({ measures: [{ id: 'error', move: 'peakEror' }] })] }),
      /^steps\[0\]\.measures\[0\]\.move: "peakEror" is not one of .* Did you mean "peakError"\?/,
    ],
    [
      'claim about nothing',
      file({ steps: [claim({ measure: 'eror' })] }),
      /^steps\[0\]\.answer\.claims\[0\]\.measure: "eror" is no measure of this step or an earlier one\. Did you mean "error"\?/,
    ],
    [
      'claim about two kinds',
      file({
        steps: [
          {
            ...claim({ than: 'force' }),
            measures: [measure, { id: 'force', move: 'peakForce' }],
          },
        ],
      }),
      /^steps\[0\]\.answer\.claims\[0\]\.than: "force" and "error" are in different units\./,
    ],
  ])('%s', (_, input, message) => {
    const [first, ...others] = texts(input);
    expect(first).toMatch(message);
    expect(others).toEqual([]);
  });

  test.each<[string, unknown]>([
    ['nothing', undefined],
    ['a number', 5],
    ['lists everywhere', file({ title: [], aim: [], notes: {}, steps: [[]] })],
    [
      'objects everywhere',
      file({ title: {}, steps: [step({ view: [], run: [], measures: {}, answer: 'yes' })] }),
    ],
  ])('%s', (_, input) => expect(texts(input)).not.toEqual([]));
});
