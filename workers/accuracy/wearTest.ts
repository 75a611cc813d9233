import type { Scene } from '../../shared/core/scene.ts';
import type { WearTest } from '../../shared/protocol/wear.ts';
import { positioning } from './positioning.ts';
import { tested } from './testAxis.ts';

/** Share of the travel that the targets cover: the table turns round beyond the outer ones. */
const COVERED = 0.9;

/** The positioning test on the machine of a scene as it was when new, and as it is after its kilometres. */
export function wearTest(scene: Scene): WearTest {
  const { travelMin, travelMax } = scene.parameters;
  const values = { travel: COVERED * (travelMax - travelMin), wear: 0 };
  const after = (kilometresTravelled: number) =>
    tested(() => {
      const parameters = { ...scene.parameters, drive: 'on' as const, kilometresTravelled };
      return positioning({ ...scene, parameters }, { values }, 'cold');
    });
  return { fresh: after(0), worn: after(scene.parameters.kilometresTravelled) };
}
