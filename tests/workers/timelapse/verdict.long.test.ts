import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import { timeLapse } from '../../../workers/timelapse/timeLapse.ts';
import { withChanges } from './fullModel.ts';
import { hot, targets, told } from './hotDuty.ts';

it('cooling through the conductance that is named, at the coolant temperature of the scene, keeps the target', () => {
  const cooling = present(timeLapse(hot, targets).cooling);
  const target = present(cooling.targets.find(({ of }) => of === 'winding'));
  const { conductance, heat } = present(target.coolant);
  const cooled = withChanges(hot, { cooling: true, carrierToCoolant: present(conductance) });
  const steady = present(timeLapse(cooled, targets).asSet.steady);
  expect(Math.abs(steady.windingPeak - 40)).toBeLessThan(0.05);
  expect(Math.abs(steady.sinkHeat / heat - 1)).toBeLessThan(0.005);
});

it('a duty cannot be done: the winding gets too hot within the hours, in half the time with half the capacities', () => {
  const limits = { windingLimit: 80, foldbackTemperature: 70 };
  const p = hot.parameters;
  const halved = {
    windingCapacity: p.windingCapacity / 2,
    carrierCapacity: p.carrierCapacity / 2,
    tableCapacity: p.tableCapacity / 2,
    screwCapacity: p.screwCapacity / 2,
  };
  const slow = timeLapse(withChanges(hot, limits), { hours: 8 }).asSet;
  const quick = timeLapse(withChanges(hot, { ...limits, ...halved }), { hours: 8 });
  expect(slow.hotTime).toBeGreaterThan(60);
  expect(Math.abs(present(slow.hotTime) / present(quick.asSet.hotTime) - 2)).toBeLessThan(0.01);
  // Folded back, the motor no longer gives the force that the move asks for.
  expect(present(slow.trip).kind).toBe('following error');
  expect(present(slow.trip).time).toBeGreaterThan(present(slow.hotTime));
  expect(present(slow.samples.at(-1)).windingPeak).toBeLessThan(limits.windingLimit);
  expect(told(quick.duty)[0]).toMatch(/^After \d+\.\d+ min the drive trips\. The following error/);
});

describe('what cooling has to do', () => {
  const cooling = present(timeLapse(hot, targets).cooling);
  const [winding, growth] = [at(cooling.targets, 0), at(cooling.targets, 1)];

  it.each([
    ['winding', winding],
    ['growth', growth],
  ])(
    'for the %s: a model that is given this coolant settles at the target and gives it this heat',
    (of, target) => {
      expect(target.metInAir).toBe(false);
      const { temperature, heat, carrier } = present(target.coolant);
      const cooled = withChanges(hot, { cooling: true, coolantTemperature: temperature });
      const steady = present(timeLapse(cooled, targets).asSet.steady);
      if (of === 'winding') expect(Math.abs(steady.windingPeak - 40)).toBeLessThan(0.05);
      else expect(Math.abs(steady.growth - 1e-6)).toBeLessThan(1e-8);
      expect(Math.abs(steady.sinkHeat / heat - 1)).toBeLessThan(0.005);
      expect(Math.abs(steady.carrier - carrier)).toBeLessThan(0.05);
    },
  );
});

it('a duty cannot be done: it settles above where its current is folded back, long after the hours that were asked', () => {
  const { asSet, duty } = timeLapse(withChanges(hot, { foldbackTemperature: 60 }), { hours: 0.05 });
  expect([asSet.trip, asSet.hotTime]).toEqual([null, null]);
  expect(told(duty).join()).toMatch(/In the long run the winding settles at/);
});
