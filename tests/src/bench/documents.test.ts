import { expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { writeGainSheet, writeGainSheetCsv } from '../../../shared/files/gainSheetFile.ts';
import { writeScene } from '../../../shared/files/sceneFile.ts';
import { writeSession } from '../../../shared/files/sessionFile.ts';
import { gainSheet } from '../../../shared/sheet/gainSheet.ts';
import { Documents, kindOf } from '../../../src/bench/documents.ts';

const scene = DEFAULT_SCENE;

it.each([
  ['scene', writeScene(scene)],
  ['session', writeSession({ scene, events: [], ticks: 0 })],
  ['gain sheet', writeGainSheet(gainSheet(scene))],
  ['gain sheet', writeGainSheetCsv(gainSheet(scene))],
  ['lesson', '{"waybench": "lesson", "version": 1}'],
  ['scene', '{"title": "a scene that speaks of a gain sheet"}'],
])('knows a file that was written as a %s', (kind, text) => {
  expect(kindOf(text)).toBe(kind);
});

it('says which model a file was made with, where it was another', async () => {
  const notes: string[] = [];
  const opened: string[] = [];
  const sinks = {
    messages: { note: (text: string) => notes.push(text) },
    openScene: () => opened.push('scene'),
  };
  const documents = new Documents(sinks as never);
  await documents.open('now.json', writeScene(scene));
  expect(notes).toEqual([]);
  await documents.open('then.json', writeScene(scene).replace(/"model": \d+/, '"model": 12'));
  expect(notes).toEqual([expect.stringMatching(/^then\.json: Made with model 12, opened with model 2: /)]);
  expect(opened).toEqual(['scene', 'scene']);
});
