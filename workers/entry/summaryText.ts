import { ranged } from '../../shared/format.ts';
import type { Scene } from '../../shared/scene.ts';
import type { Unit } from '../../shared/units.ts';
import type { RunSummary } from '../run/measureRun.ts';

/** The printed summary of a headless run. */
export function summaryText(scene: Scene, s: RunSummary): string {
  const pair = (a: number, b: number, unit: Unit) => `${ranged(a, unit)} / ${ranged(b, unit)}`;
  const lines: [string, string][] = [
    ['Simulated', ranged(s.simulatedTime, 's')],
    ['Following error, peak / RMS', pair(s.peakFollowingError, s.rmsFollowingError, 'm')],
    ['Position error at the tool, peak', ranged(s.peakToolError, 'm')],
    [
      `Settling into ±${ranged(scene.parameters.window, 'm')}, worst of ${s.moves.length} moves`,
      s.moves.length === 0
        ? 'no move'
        : s.settlingTime === null
          ? 'not settled'
          : ranged(s.settlingTime, 's'),
    ],
    ['Force, peak / RMS', pair(s.peakForce, s.rmsForce, 'N')],
    ['Current amplitude, peak / RMS', pair(s.peakCurrent, s.rmsCurrent, 'A')],
    ['Voltage amplitude, peak', ranged(s.peakVoltage, 'V')],
    ['Copper loss, mean', ranged(s.copperLoss, 'W')],
    ['Winding / carrier', pair(s.windingTemperature, s.carrierTemperature, '°C')],
    ['Table / screw', pair(s.tableTemperature, s.screwTemperature, '°C')],
    ['Energy residual over throughput', s.energyResidual.toExponential(1)],
  ];
  const width = Math.max(...lines.map(([label]) => label.length));
  const text = lines.map(([label, value]) => `  ${label.padEnd(width)}  ${value}`);
  const end = s.trip ? `TRIPPED (${s.trip.kind}) at ${ranged(s.trip.time, 's')}: ${s.trip.message}` : 'Done.';
  return [scene.title, ...text, end].join('\n');
}
