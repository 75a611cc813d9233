import type { AxisClient } from '../clients/axisClient.ts';
import { type Bench, differences, presentScene } from './bench.ts';

/** Sends to the simulation what changed on the bench: parameters as they are, anything else as a new scene. */
export function sendToAxis(axis: AxisClient, is: Bench, was: Bench, running: boolean): void {
  if (sameSituation(is, was)) {
    axis.send('change', differences(was.parameters, is.parameters));
    return;
  }
  axis.send('load', presentScene(is));
  if (running) axis.send('run');
}

/** The same scene with the same drive on it, whatever its parameters and its name. */
export function sameSituation(is: Bench, was: Bench): boolean {
  const [one, other] = [is.origin, was.origin];
  return (
    one.parameters === other.parameters &&
    one.moves === other.moves &&
    one.coggingTable === other.coggingTable &&
    one.learnedMove === other.learnedMove &&
    one.driveType === other.driveType &&
    one.preset === other.preset
  );
}
