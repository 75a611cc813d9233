import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { at, valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX, type ChannelName } from '../../shared/core/channels.ts';
import {
  defaultParameters,
  type ParameterChanges,
  type Parameters,
} from '../../shared/core/parameters/table.ts';
import type { Engine } from '../../shared/protocol/axis.ts';
import { Axis } from '../../workers/run/axis.ts';
import { ENGINES } from '../../workers/solver/engine.ts';
import { filesUnder, ROOT } from '../tools/sources.mjs';
import { sceneOf } from '../workers/model/sceneOf.ts';

/*
 * The axis against a second implementation of the same equations: written in another language from the model page alone,
 * solved by SciPy's implicit Radau IIA at 1e-10 with the bristle rate not capped. See reference/README.md.
 */

interface Fixture {
  readonly run: string;
  readonly scene: string;
  readonly duration: number;
  readonly changes: ParameterChanges;
  /** All of them, so that a scene may be retuned without a new reference run. */
  readonly parameters: Parameters;
  /** Largest following error at any position-loop sample, m, and largest current amplitude, A. */
  readonly peakFollowingError: number;
  readonly peakCurrent: number;
  /** What a hundredth of the solver's tolerance changed, m and A. */
  readonly convergence: { readonly x2: number; readonly iq: number };
  /** Current-loop periods from row to row. */
  readonly stride: number;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly number[])[];
}

const COLUMN_OF: Partial<Record<ChannelName, string>> = {
  time: 'time',
  tablePosition: 'x2',
  motorPosition: 'x1',
  tableSpeed: 'v2',
  forceCurrent: 'iq',
  fieldCurrent: 'id',
  followingError: 'followingError',
  windingTemperature: 'windingTemperature',
  basePosition: 'basePosition',
};

const readJson = (file: string) => JSON.parse(readFileSync(join(ROOT, file), 'utf8'));

const RUNS = 'tests/reference/runs.json';
const runs: Record<string, { scene: string; duration: number; changes: ParameterChanges }> = readJson(RUNS);
const fixtures: Fixture[] = filesUnder('tests/reference')
  .filter((file) => file.endsWith('.json') && file !== RUNS)
  .map(readJson);

it('has a reference run of every kind of drive', () => {
  expect(fixtures.map(({ run }) => run)).toEqual(
    expect.arrayContaining(['tubular', 'u-channel', 'flat', 'screw']),
  );
});

it('has the result of every run as it is listed', () => {
  const solved = fixtures.map(({ run, scene, duration, changes }) => [run, { scene, duration, changes }]);
  expect(Object.fromEntries(solved)).toEqual(runs);
});

const runsByEngine = fixtures.flatMap((fixture) =>
  (Object.keys(ENGINES) as Engine[]).map((engine) => ({ run: fixture.run, engine, fixture })),
);

describe.each(runsByEngine)('reference run $run by $engine', ({ engine, fixture }) => {
  /** Largest deviation from the reference over all rows, by channel. */
  const deviation: Partial<Record<ChannelName, number>> = {};
  const positionTolerance = Math.max(5e-9, 1e-3 * fixture.peakFollowingError);
  const currentTolerance = 2e-3 * fixture.peakCurrent;

  beforeAll(() => {
    // Rows that the table has gained since the run stand at their defaults.
    const parameters = { ...defaultParameters(), ...fixture.parameters };
    const axis = new Axis(sceneOf(parameters), { solver: ENGINES[engine] });
    expect(axis.engine).toBe(engine);
    const channels = Object.entries(COLUMN_OF).map(([name, column]) => ({
      name: name as ChannelName,
      index: CHANNEL_INDEX[name as ChannelName],
      column: fixture.columns.indexOf(column),
    }));
    for (const row of fixture.rows) {
      do expect(axis.step(), axis.trip?.kind).toBe(true);
      while ((axis.tick - 1) % fixture.stride !== 0);
      for (const { name, index, column } of channels) {
        const difference = Math.abs(valueAt(axis.record, index) - at(row, column));
        deviation[name] = Math.max(deviation[name] ?? 0, difference);
      }
    }
  });

  it('is itself converged to a hundredth of what is asked of the axis', () => {
    expect(fixture.convergence.x2).toBeLessThan(positionTolerance / 100);
    expect(fixture.convergence.iq).toBeLessThan(currentTolerance / 100);
  });

  it('is compared at the same instants', () => {
    expect(deviation.time).toBeLessThan(1e-12);
  });

  it.each(['tablePosition', 'motorPosition', 'basePosition'] as const)(
    'agrees in %s within 5 nm or a thousandth of the peak following error',
    (channel) => {
      expect(deviation[channel]).toBeLessThan(positionTolerance);
    },
  );

  it('agrees in the following error within the same and two encoder counts', () => {
    expect(deviation.followingError).toBeLessThan(
      positionTolerance + 2 * fixture.parameters.encoderResolution,
    );
  });

  it.each(['forceCurrent', 'fieldCurrent'] as const)(
    'agrees in %s within two thousandths of the peak current',
    (channel) => {
      expect(deviation[channel]).toBeLessThan(currentTolerance);
    },
  );

  it('agrees in the heat of the winding', () => {
    expect(deviation.windingTemperature).toBeLessThan(1e-5);
  });
});
