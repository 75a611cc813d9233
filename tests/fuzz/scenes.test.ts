import fc from 'fast-check';
import { expect, it } from 'vitest';
import { at, valueAt } from '../../shared/core/at.ts';
import { CHANNEL_NAMES } from '../../shared/core/channels.ts';
import { CROSS_RULES } from '../../shared/core/crossChecks.ts';
import { PARAMETER_NAMES, type ParameterName, parameterRow } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { tripText } from '../../shared/figures/tripText.ts';
import { writeScene } from '../../shared/files/sceneFile.ts';
import { measureRun } from '../../workers/run/measureRun.ts';
import { Session } from '../../workers/run/session.ts';
import { batchSolver } from '../../workers/solver/engine.ts';
import { anyScene, anyValue, share } from '../shared/core/arbitraries.ts';
import { COUNTS, SEED } from './counts.ts';

/** Simulated, s, and at most so many periods of the current loop. */
const SECONDS = 0.05;
const MAX_TICKS = 1200;

const ticksOf = ({ parameters }: Scene) => Math.min(Math.round(SECONDS * parameters.currentRate), MAX_TICKS);

/** A parameter that is set, or a hand that pulls to a place of the travel or lets go, at some share of the run. */
const anyDeed = fc.oneof(
  fc
    .constantFrom(...PARAMETER_NAMES)
    .chain((name) =>
      fc.record({ when: share, name: fc.constant(name), value: anyValue(parameterRow(name)) }),
    ),
  fc.record({ when: share, pull: fc.option(share) }),
);

const anyRun = fc.record({ scene: anyScene, deeds: fc.array(anyDeed, { maxLength: 5 }) });
type Deed = typeof anyDeed extends fc.Arbitrary<infer D> ? D : never;

function act(session: Session, deed: Deed): void {
  const p = session.axis.parameters;
  if ('pull' in deed)
    session.hand(deed.pull === null ? null : p.travelMin + deed.pull * (p.travelMax - p.travelMin));
  else {
    const changed = { ...p, [deed.name as ParameterName]: deed.value };
    // The page asks for nothing that contradicts itself.
    if (!CROSS_RULES.some(({ broken }) => broken(changed))) session.change({ [deed.name]: deed.value });
  }
}

function expectFinite(record: Float64Array, tick: number): void {
  for (let c = 0; c < record.length; c++)
    if (!Number.isFinite(valueAt(record, c)))
      throw new Error(`${at(CHANNEL_NAMES, c)} is ${record[c]} at tick ${tick}`);
}

/** What goes wrong with a scene is shown with the scene, to be saved as a file and run. */
function reproducibly(scene: Scene, check: () => void): void {
  try {
    check();
  } catch (error) {
    const how = `npm run axis -- this-scene.json --seconds ${SECONDS}`;
    throw new Error(`${error instanceof Error ? error.message : error}\n${how}\n${writeScene(scene)}`);
  }
}

function play(session: Session, deeds: readonly Deed[], ticks: number): void {
  const due = [...deeds].sort((a, b) => b.when - a.when);
  for (let tick = 0; tick < ticks && session.canStep; tick++) {
    while (due.length > 0 && at(due, due.length - 1).when * ticks <= tick) act(session, due.pop() as Deed);
    session.step();
    if (session.recorder.full) session.recorder.hand(null);
    expectFinite(session.axis.record, session.axis.tick);
  }
}

it('any legal scene, with changes and hands while it runs, keeps every channel finite and can be repeated to the last digit', () => {
  fc.assert(
    fc.property(anyRun, ({ scene, deeds }) =>
      reproducibly(scene, () => {
        const session = new Session(scene);
        play(session, deeds, ticksOf(scene));
        const { trip, record } = session.axis;
        if (trip) expect(tripText(trip, 'metric')).toMatch(/^(?!.*(?:NaN|Infinity|undefined)).+\.$/);
        if (trip && scene.parameters.drive === 'off' && deeds.length === 0)
          expect(tripText(trip, 'metric')).not.toMatch(/gain/);
        const again = Session.replay(session.recording());
        play(again, [], Number.POSITIVE_INFINITY);
        expect([...again.axis.record]).toEqual([...record]);
        expect(again.axis.trip).toEqual(trip);
      }),
    ),
    { numRuns: COUNTS.scenes, seed: SEED },
  );
});

it('any legal scene runs in fixed steps, or trips for a reason', () => {
  fc.assert(
    fc.property(anyScene, (scene) =>
      reproducibly(scene, () => {
        const seconds = ticksOf(scene) / scene.parameters.currentRate;
        const run = measureRun(scene, seconds, (record) => expectFinite(record, Number.NaN), batchSolver);
        const { rmsForce, peakCurrent, windingTemperature, energyIn } = run;
        expect(
          [rmsForce, peakCurrent, windingTemperature, energyIn].filter((each) => !Number.isFinite(each)),
        ).toEqual([]);
      }),
    ),
    { numRuns: COUNTS.scenes, seed: SEED },
  );
});
