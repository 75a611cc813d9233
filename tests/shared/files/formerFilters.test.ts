import { describe, expect, it } from 'vitest';
import { SHELF } from '../../../scenes/index.ts';
import { defaultParameters } from '../../../shared/core/parameters/table.ts';
import { gainsFromSheet } from '../../../shared/files/gainSheetFile.ts';
import { readScene } from '../../../shared/files/sceneFile.ts';
import { readSession } from '../../../shared/files/sessionFile.ts';
import { readSnapshots } from '../../../shared/files/snapshots.ts';

/** What a loop had before it had four filters of any type. */
const FORMER = {
  notch1: true,
  notch1Frequency: 210,
  notch1Width: 0.6,
  notch1Depth: 0.05,
  notch2: false,
  notch2Frequency: 900,
  lowpass: true,
  lowpassFrequency: 1700,
  lowpassDamping: 0.8,
};

const TODAY = {
  filter1: 'notch',
  filter1Frequency: 210,
  filter1Damping: 0.6,
  filter1Depth: 0.05,
  filter2: 'off',
  filter2Frequency: 900,
  filter3: 'low-pass',
  filter3Frequency: 1700,
  filter3Damping: 0.8,
  filter4: 'off',
};

const scene = {
  waybench: 'scene',
  version: 3,
  title: 'Filtered',
  lookFor: '',
  driveType: 'tubular',
  parameters: FORMER,
};

describe('two notches and a low-pass of an earlier version', () => {
  it('are the first three filters of a scene', () => {
    expect(readScene(scene, SHELF)).toMatchObject({ scene: { parameters: TODAY } });
  });

  it('are changed in a session as they were', () => {
    const session = {
      waybench: 'session',
      version: 1,
      scene,
      events: [{ tick: 5, kind: 'change', changes: { notch2: true, lowpass: false } }],
      ticks: 10,
    };
    expect(readSession(session, SHELF)).toMatchObject({
      session: { events: [{ changes: { filter2: 'notch', filter3: 'off' } }] },
    });
  });

  it('are kept in snapshots and on gain sheets', () => {
    const kept = { waybench: 'snapshots', version: 1, snapshots: [{ name: 'before', tuning: FORMER }] };
    const { filter4: _off, ...today } = TODAY;
    expect(readSnapshots(JSON.stringify(kept))).toMatchObject({
      snapshots: [{ tuning: today }],
      problems: [],
    });
    const sheet = 'value;parameter\non;notch1\n333;notch1Frequency\noff;lowpass\n';
    expect(gainsFromSheet(sheet, defaultParameters())).toMatchObject({
      changes: { filter1: 'notch', filter1Frequency: 333 },
    });
  });

  it('beside a name of today are refused by name', () => {
    const both = { ...scene, parameters: { notch1: true, filter1: 'off' } };
    expect(readScene(both, SHELF)).toMatchObject({
      problems: [{ field: expect.stringContaining('notch1') }],
    });
  });
});
