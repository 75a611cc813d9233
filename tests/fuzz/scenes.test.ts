import fc from 'fast-check';
import { expect, it } from 'vitest';
import { at } from '../../shared/core/at.ts';
import { CROSS_RULES } from '../../shared/core/crossChecks.ts';
import {
  PARAMETER_NAMES,
  type ParameterName,
  type Parameters,
  parameterRow,
} from '../../shared/core/parameters/table.ts';
import { tripText } from '../../shared/figures/tripText.ts';
import { Session } from '../../workers/run/session.ts';
import { anyScene, anyValue, share } from '../shared/core/arbitraries.ts';
import { COUNTS, SEED } from './counts.ts';
import { anyWork, costOfPeriod, expectFinite, reproducibly } from './runs.ts';

/** A parameter that is set, or a hand that pulls to a place of the travel or lets go, at some share of the run. */
const anyDeed = fc.oneof(
  fc
    .constantFrom(...PARAMETER_NAMES)
    .chain((name) =>
      fc.record({ when: share, name: fc.constant(name), value: anyValue(parameterRow(name)) }),
    ),
  fc.record({ when: share, pull: fc.option(share) }),
);

const anyRun = fc.record({ scene: anyScene, deeds: fc.array(anyDeed, { maxLength: 5 }), work: anyWork });
type Deed = typeof anyDeed extends fc.Arbitrary<infer D> ? D : never;

/** @returns the parameters from then on */
function act(session: Session, deed: Deed): Parameters {
  const p = session.axis.parameters;
  if ('pull' in deed) {
    session.hand(deed.pull === null ? null : p.travelMin + deed.pull * (p.travelMax - p.travelMin));
    return p;
  }
  const changed = { ...p, [deed.name as ParameterName]: deed.value };
  // The page asks for nothing that contradicts itself.
  if (CROSS_RULES.some(({ broken }) => broken(changed))) return p;
  session.change({ [deed.name]: deed.value });
  return changed;
}

function step(session: Session): void {
  session.step();
  if (session.recorder.full) session.recorder.hand(null);
  expectFinite(session.axis.record, `tick ${session.axis.tick}`);
}

function play(session: Session, deeds: readonly Deed[], work: number): void {
  const due = [...deeds].sort((a, b) => b.when - a.when);
  let cost = costOfPeriod(session.axis.parameters);
  for (let spent = 0; spent < work && session.canStep; spent += cost) {
    while (due.length > 0 && at(due, due.length - 1).when * work <= spent)
      cost = costOfPeriod(act(session, due.pop() as Deed));
    step(session);
  }
}

it('any legal scene, with changes and hands while it runs, keeps every channel finite and can be repeated to the last digit', () => {
  fc.assert(
    fc.property(anyRun, ({ scene, deeds, work }) =>
      reproducibly(scene, () => {
        const session = new Session(scene);
        play(session, deeds, work);
        const { trip, record } = session.axis;
        if (trip) expect(tripText(trip, 'metric')).toMatch(/^(?!.*(?:NaN|Infinity|undefined)).+\.$/);
        if (trip && scene.parameters.drive === 'off' && deeds.length === 0)
          expect(tripText(trip, 'metric')).not.toMatch(/gain/);
        const again = Session.replay(session.recording());
        while (again.canStep) step(again);
        expect([...again.axis.record]).toEqual([...record]);
        expect(again.axis.trip).toEqual(trip);
      }),
    ),
    { numRuns: COUNTS.scenes, seed: SEED },
  );
});
