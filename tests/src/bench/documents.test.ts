import { expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { writeGainSheet, writeGainSheetCsv } from '../../../shared/files/gainSheetFile.ts';
import { writeScene } from '../../../shared/files/sceneFile.ts';
import { writeSession } from '../../../shared/files/sessionFile.ts';
import { gainSheet } from '../../../shared/sheet/gainSheet.ts';
import { kindOf } from '../../../src/bench/documents.ts';

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
