import { describe, expect, test } from 'vitest';
import { DEFAULT_SCENE, SHELF } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import { problemText } from '../../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../../shared/core/sentence.ts';
import { sceneEntries } from '../../../shared/files/sceneFile.ts';
import { readSession, writeSession } from '../../../shared/files/sessionFile.ts';
import type { TuningSession } from '../../../shared/protocol/axis.ts';

const scene = DEFAULT_SCENE;

const session: TuningSession = {
  scene,
  engine: 'batch',
  events: [
    { tick: 0, kind: 'change', changes: { payload: 6.5 } },
    { tick: 160, kind: 'hand', position: 0.0123 },
    { tick: 160, kind: 'hand', position: null },
    { tick: 320, kind: 'engine', engine: 'odex' },
    {
      tick: 4000,
      kind: 'change',
      changes: { filter1: 'notch', filter1Frequency: 812.3456789, program: 'hold' },
    },
  ],
  ticks: 32000,
};

const file = (entries: object = {}) => ({
  waybench: 'session',
  version: 2,
  scene: sceneEntries(scene),
  events: [],
  ticks: 100,
  ...entries,
});

test('a session reads back, number by number', () => {
  expect(readSession(writeSession(session), SHELF)).toEqual({ session });
});

test('its scene may be of an earlier version and name a preset', () => {
  const old = { waybench: 'scene', version: 1, title: 'Old', preset: 'flat', parameters: { strokeMm: 100 } };
  const result = readSession(file({ scene: old }), SHELF);
  expect(result).toMatchObject({ session: { scene: { driveType: 'flat', parameters: { stroke: 0.1 } } } });
});

describe('a bad session is refused in plain words', () => {
  const event = (entries: object) => file({ events: [{ tick: 5, kind: 'hand', position: 0, ...entries }] });
  const change = (changes: unknown) => file({ events: [{ tick: 5, kind: 'change', changes }] });
  test.each<[string, unknown, RegExp]>([
    ['a scene', sceneEntries(scene), /^This is not a session file: .* is "scene"/],
    [
      'newer',
      file({ version: 3 }),
      /version 3 and was written by a newer Waybench\. This one reads versions up to 2/,
    ],
    ['an unknown engine', file({ engine: 'euler' }), /^engine: .*one of odex, batch/],
    [
      'a change to an unknown engine',
      file({ events: [{ tick: 5, kind: 'engine', engine: 'euler' }] }),
      /^events\[0\]\.engine: .*one of odex, batch/,
    ],
    [
      'stray entry',
      file({ evnts: [] }),
      /^"evnts" is not an entry of a session file\. Did you mean "events"/,
    ],
    ['no scene', file({ scene: undefined }), /^scene: A scene file must contain an object, not nothing/],
    ['scene as text', file({ scene: '{}' }), /^scene: text is not a scene/],
    ['bad scene', file({ scene: { ...sceneEntries(scene), title: 5 } }), /^scene: title: 5 is not text/],
    ['no events', file({ events: undefined }), /^events: it is missing/],
    ['no ticks', file({ ticks: undefined }), /^ticks: it is missing/],
    ['negative ticks', file({ ticks: -1 }), /^ticks: -1 is not a number/],
    ['half a tick', file({ ticks: 0.5 }), /^ticks: 0\.5 is not a number/],
    [
      'ticks of centuries',
      file({ ticks: 9e15 }),
      /^ticks: 9000000000000000 periods of the current loop are more than 10 hours at 16000 Hz\. Give at most 576000000\.$/,
    ],
    ['event as text', file({ events: ['hand'] }), /^events\[0\]: "hand" is not an event/],
    ['unknown kind', event({ kind: 'kick' }), /^events\[0\]\.kind: "kick" is not one of change, hand/],
    ['tick as text', event({ tick: '5' }), /^events\[0\]\.tick: "5" is outside 0 to 100/],
    ['tick after the end', event({ tick: 101 }), /^events\[0\]\.tick: 101 is outside 0 to 100/],
    [
      'ticks in disorder',
      file({ events: [7, 3].map((tick) => ({ tick, kind: 'hand', position: null })) }),
      /^events\[1\]\.tick: 3 is outside 7 to 100/,
    ],
    ['hand nowhere', event({ position: undefined }), /^events\[0\]\.position: it is missing/],
    ['hand far away', event({ position: 50 }), /^events\[0\]\.position: 50 m is outside .* null to let go/],
    ['no changes', change(undefined), /^events\[0\]: Parameters must be an object/],
    ['illegal change', change({ speed: 60 }), /^events\[0\]: speed: 60 m\/s is outside/],
    [
      'change that restarts',
      change({ motorCount: 2 }),
      /^events\[0\]: motorCount cannot change while the axis runs/,
    ],
    ['contradiction', change({ travelMax: 0.01 }), /^events\[0\]: The shuttle would reach 0\.125 m/],
  ])('%s', (_case, input, message) => {
    const result = readSession(input, SHELF);
    if ('session' in result) throw new Error('was read');
    expect(problemText(at(result.problems, 0), AS_WRITTEN)).toMatch(message);
  });
});

test('a change is checked against the changes before it', () => {
  const events = [
    { tick: 1, kind: 'change', changes: { sweepTo: 200 } },
    { tick: 2, kind: 'change', changes: { sweepFrom: 300 } },
  ];
  expect(readSession(file({ events }), SHELF)).toMatchObject({
    problems: [{ field: 'events[1].changes.sweepFrom' }],
  });
});
