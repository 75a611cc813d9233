import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DEFAULT_STUDY } from '../../../scenes/defaultStudy.ts';
import { DEFAULT_SCENE, PRESETS, SHELF } from '../../../scenes/index.ts';
import { LESSONS } from '../../../scenes/lessons/index.ts';
import { at } from '../../../shared/core/at.ts';
import { defaultParameters } from '../../../shared/core/parameters/table.ts';
import { presetParameters } from '../../../shared/core/preset.ts';
import { problemText } from '../../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../../shared/core/sentence.ts';
import { MODEL_VERSION } from '../../../shared/core/version.ts';
import { withFiltersOfToday } from '../../../shared/files/formerFilters.ts';
import { gainsFromSheet, writeGainSheet } from '../../../shared/files/gainSheetFile.ts';
import { readLesson } from '../../../shared/files/lesson/lessonFile.ts';
import { writeLesson } from '../../../shared/files/lesson/writeLesson.ts';
import { otherModelText } from '../../../shared/files/otherModel.ts';
import { readScene, writeScene } from '../../../shared/files/sceneFile.ts';
import { readLink } from '../../../shared/files/sceneLink.ts';
import { readSession, writeSession } from '../../../shared/files/sessionFile.ts';
import { readSnapshots, writeSnapshots } from '../../../shared/files/snapshots.ts';
import { readStudy, writeStudy } from '../../../shared/files/studyFile.ts';
import { readStudyLink } from '../../../shared/files/studyLink.ts';
import { gainSheet } from '../../../shared/sheet/gainSheet.ts';
import { defaultJobValues } from '../../../shared/study/job.ts';

/*
 * Files and links as earlier versions of this product wrote them, kept as they were: they still open, and mean the same.
 */
const text = (name: string) => readFileSync(new URL(`./earlier/${name}`, import.meta.url), 'utf8');
const links = JSON.parse(text('links.json')) as Record<'scene' | 'otherScene' | 'study' | 'scene2', string>;

describe('a scene of an earlier version', () => {
  it('of version 2 reads every value, and is written in the present version with the same values', () => {
    const read = readScene(text('scene-2.json'), SHELF);
    if ('problems' in read) throw new Error(problemText(at(read.problems, 0), AS_WRITTEN));
    const old = JSON.parse(text('scene-2.json'));
    expect(read.scene).toMatchObject({ title: 'Vertical, heavier', driveType: old.form, moves: old.moves });
    // What is newer than the file is at its default.
    expect(read.scene.parameters).toEqual({ ...defaultParameters(), ...withFiltersOfToday(old.parameters) });
    expect(readScene(writeScene(read.scene), SHELF)).toEqual(read);
  });

  it('of version 3 has its notch in the first filter', () => {
    const read = readScene(text('scene-3.json'), SHELF);
    if ('problems' in read) throw new Error(problemText(at(read.problems, 0), AS_WRITTEN));
    const { notch1Frequency, notch1Depth } = JSON.parse(text('scene-3.json')).parameters;
    expect(read.scene.parameters).toMatchObject({
      filter1: 'notch',
      filter1Frequency: notch1Frequency,
      filter1Depth: notch1Depth,
    });
  });

  it('of version 2 with a kit takes the drive of that name', () => {
    const read = readScene(text('scene-2-shorthand.json'), SHELF);
    expect(read).toMatchObject({
      scene: {
        driveType: 'flat',
        parameters: { ...presetParameters(PRESETS.flat!, 2), motorCount: 2, payload: 12, stroke: 0.15 },
      },
    });
  });

  it('of version 1 is read in the units of its names', () => {
    const read = readScene(text('scene-1.json'), SHELF);
    expect(read).toMatchObject({ scene: { driveType: 'screw', parameters: { stroke: 0.1, lead: 0.01 } } });
  });

  it('is known by its title and its motor, since it does not say what it is based on', () => {
    const old = JSON.parse(text('scene-2.json'));
    const identity = (changes: object, parameters: object = {}) => {
      const read = readScene({ ...old, ...changes, parameters: { ...old.parameters, ...parameters } }, SHELF);
      return 'scene' in read ? [read.scene.id, read.scene.preset] : read.problems;
    };
    expect(identity({})).toEqual([null, 'tubular']);
    expect(identity({ title: DEFAULT_SCENE.title }, { Kp: 1e5 })).toEqual(['mould-shuttle', 'tubular']);
    expect(identity({}, { forceConstant: 61 })).toEqual([null, null]);
    expect(identity({ form: 'flat' })).toEqual([null, null]);
  });

  it('is refused where it has an old name beside the new one', () => {
    const both = { ...JSON.parse(text('scene-2.json')), driveType: 'flat' };
    expect(readScene(both, SHELF)).toMatchObject({ problems: [{ field: 'form' }] });
  });
});

it('a session of version 1 replays the same events on the same scene', () => {
  const old = JSON.parse(text('session-1.json'));
  const read = readSession(text('session-1.json'), SHELF);
  expect(read).toMatchObject({
    session: {
      events: old.events.map((event: { changes?: object }) =>
        event.changes ? { ...event, changes: withFiltersOfToday({ ...event.changes }) } : event,
      ),
      ticks: old.ticks,
      scene: {
        title: old.scene.title,
        driveType: old.scene.form,
        parameters: withFiltersOfToday(old.scene.parameters),
      },
    },
  });
});

it('a session of version 2 says what it was integrated by, and since when', () => {
  expect(readSession(text('session-2.json'), SHELF)).toMatchObject({
    session: { engine: 'odex', events: [{ kind: 'change' }, { tick: 480, kind: 'engine', engine: 'batch' }] },
  });
});

it('a study of version 1 has its job and its candidates with their own values and gains', () => {
  const old = JSON.parse(text('study-1.json'));
  const read = readStudy(text('study-1.json'), PRESETS);
  if ('problems' in read) throw new Error(problemText(at(read.problems, 0), AS_WRITTEN));
  // What is newer than the file is at its default.
  expect(read.study.job.values).toEqual({ ...defaultJobValues(), ...old.values });
  expect(read.study.candidates).toHaveLength(old.lanes.length);
  for (const [index, { kit, motorCount, own }] of old.lanes.entries()) {
    expect(read.study.candidates[index]).toMatchObject({ preset: kit, motorCount, own });
  }
  expect(at(read.study.candidates, 2).gains).toMatchObject({ Kp: 2.5e6, Kd: 9000 });
  expect(readStudy(writeStudy(read.study), PRESETS)).toEqual(read);
});

it('a study of version 2 has its job and its candidates', () => {
  const old = JSON.parse(text('study-2.json'));
  const read = readStudy(text('study-2.json'), PRESETS);
  if ('problems' in read) throw new Error(problemText(at(read.problems, 0), AS_WRITTEN));
  expect(read.study.job).toMatchObject({ title: old.title, values: old.values });
  expect(read.study.candidates).toMatchObject(
    old.candidates.map(({ preset, motorCount }: { preset: string; motorCount: number }) => ({
      preset,
      motorCount,
    })),
  );
});

it.each(['gain-sheet-1.json', 'gain-sheet-1.csv'])('%s lays its gains over the bench', (name) => {
  const { parameters } = DEFAULT_SCENE;
  expect(gainsFromSheet(text(name), parameters)).toMatchObject({ changes: { Kp: 1.7e6, Kd: 6100 } });
});

it('a lesson of version 1 has all its steps', () => {
  const old = JSON.parse(text('lesson-1.json'));
  const read = readLesson(text('lesson-1.json'), SHELF);
  if ('problems' in read) throw new Error(problemText(at(read.problems, 0), AS_WRITTEN));
  expect(read.lesson.steps.map(({ title }) => title)).toEqual(
    old.steps.map(({ title }: { title: string }) => title),
  );
});

it('snapshots of version 1 have their names and gains', () => {
  expect(readSnapshots(text('snapshots-1.json'))).toMatchObject({
    snapshots: [{ name: 'Soft', tuning: { Kp: 1.7e6, Kd: 6100 } }],
    problems: [],
  });
});

it('every kind of file of every version so far has an example here', () => {
  const present = [
    ['scene', writeScene(DEFAULT_SCENE)],
    ['session', writeSession({ scene: DEFAULT_SCENE, events: [], ticks: 0 })],
    ['study', writeStudy(DEFAULT_STUDY)],
    ['lesson', writeLesson(at(LESSONS, 0).lesson, SHELF)],
    ['gain-sheet', writeGainSheet(gainSheet(DEFAULT_SCENE))],
    ['snapshots', writeSnapshots([])],
  ] as const;
  for (const [kind, written] of present)
    for (let version = 1; version <= JSON.parse(written).version; version++)
      expect(JSON.parse(text(`${kind}-${version}.json`)).version, kind).toBe(version);
});

it('a link of version 2 has what differs from its scene', () => {
  expect(readLink(links.scene2, SHELF)).toMatchObject({
    scene: { id: DEFAULT_SCENE.id, parameters: { Kp: 1.7e6, Kd: 6100, payload: 5 } },
  });
});

describe('the version of the model', () => {
  const ofModel = (model: unknown) =>
    writeScene(DEFAULT_SCENE).replace(/"model": \d+/, `"model": ${JSON.stringify(model)}`);

  it('is in the file, and one that differs is told', () => {
    expect(JSON.parse(writeScene(DEFAULT_SCENE)).model).toBe(MODEL_VERSION);
    expect(otherModelText(writeScene(DEFAULT_SCENE))).toBeNull();
    expect(otherModelText(ofModel(MODEL_VERSION + 1))).toMatch(/^Made with model 3, opened with model 2: /);
    expect(otherModelText(writeStudy(DEFAULT_STUDY).replace(/"model": \d+/, '"model": 7'))).toMatch(
      /model 7/,
    );
    // Files from before it was written do not say.
    expect(otherModelText(text('scene-3.json'))).toBeNull();
  });

  it('changes nothing of what the file holds, and has to be one', () => {
    expect(readScene(ofModel(MODEL_VERSION + 1), SHELF)).toEqual({ scene: DEFAULT_SCENE });
    expect(readScene(ofModel('new'), SHELF)).toMatchObject({ problems: [{ field: 'model' }] });
  });
});

describe('a link of version 1', () => {
  it('to a scene of the shelf lays what differs over that scene', () => {
    const scene = DEFAULT_SCENE;
    expect(readLink(links.scene, SHELF)).toEqual({
      scene: { ...scene, parameters: { ...scene.parameters, payload: 6.5, filter1: 'notch' } },
    });
  });

  /** What the flat kit had when the link was made, and has no longer. */
  const FORMER_FLAT = {
    resistance: 4.3,
    inductance: 0.03,
    saturationCurrent: 30,
    coilMass: 4.5,
    windingCapacity: 420,
    carrierCapacity: 2500,
    carrierToAir: 1.02,
    carrierToTable: 1,
    peakCurrent: 22,
  };

  it('to another scene has its drive type and every value', () => {
    const { parameters } = DEFAULT_SCENE;
    expect(readLink(links.otherScene, SHELF)).toMatchObject({
      scene: {
        id: null,
        preset: null,
        title: 'Of my own',
        driveType: 'flat',
        // What is newer than the link is at its default.
        parameters: {
          ...parameters,
          ...presetParameters(PRESETS.flat!, 1),
          ...FORMER_FLAT,
          carrierToCoolant: defaultParameters().carrierToCoolant,
        },
      },
    });
  });

  it('to a study is the study that the file holds', () => {
    expect(readStudyLink(links.study, PRESETS)).toEqual(readStudy(text('study-1.json'), PRESETS));
  });
});
