import { ranged } from '../../shared/core/format.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { Unit } from '../../shared/core/units.ts';
import { MOVE_FIGURES, type MoveFigureName, moveFigureText } from '../../shared/figures/moveFigures.ts';
import { NOTICE_TEXTS, tripText } from '../../shared/figures/tripText.ts';
import type { Engine } from '../../shared/protocol/axis.ts';
import type { RunSummary } from '../run/measureRun.ts';

type WorstOfMoves = MoveFigureName &
  keyof RunSummary &
  ('riseTime' | 'settlingTime' | 'overshoot' | 'velocityRipplePeak' | 'velocityRippleRms');

/** The printed summary of a headless run, for which `wanted` was to integrate the plant. */
export function summaryText(scene: Scene, s: RunSummary, wanted: Engine): string {
  const pair = (a: number, b: number, unit: Unit) => `${ranged(a, unit)} / ${ranged(b, unit)}`;
  const { length } = s.moves;
  const worst = (name: WorstOfMoves, label = ''): [string, string] => [
    `${MOVE_FIGURES[name].label}${label}, worst of ${length === 1 ? '1 move' : `${length} moves`}`,
    length === 0 ? 'no move' : moveFigureText(name, s[name]),
  ];
  const lines: [string, string][] = [
    ['Simulated', ranged(s.simulatedTime, 's')],
    ['Following error, peak / RMS', pair(s.peakFollowingError, s.rmsFollowingError, 'm')],
    ['Position error at the tool, peak', ranged(s.peakToolError, 'm')],
    worst('riseTime'),
    worst('settlingTime', ` into ±${ranged(scene.parameters.window, 'm')}`),
    worst('overshoot'),
    worst('velocityRipplePeak'),
    worst('velocityRippleRms'),
    ['Force, peak / RMS', pair(s.peakForce, s.rmsForce, 'N')],
    ['Current amplitude, peak / RMS', pair(s.peakCurrent, s.rmsCurrent, 'A')],
    ['Voltage amplitude, peak', ranged(s.peakVoltage, 'V')],
    ['Headroom of current / voltage', pair(s.currentHeadroom, s.voltageHeadroom, '%')],
    ['Copper loss, mean', ranged(s.copperLoss, 'W')],
    ['Winding / carrier temperature at the end', pair(s.windingTemperature, s.carrierTemperature, '°C')],
    ['Table / screw temperature at the end', pair(s.tableTemperature, s.screwTemperature, '°C')],
    ['Engine', s.engine === wanted ? s.engine : `${s.engine}: this plant is too stiff for ${wanted}`],
    ['Energy residual over throughput', s.energyResidual.toExponential(1)],
  ];
  const width = Math.max(...lines.map(([label]) => label.length));
  const text = lines.map(([label, value]) => `  ${label.padEnd(width)}  ${value}`);
  const end = s.trip
    ? `TRIPPED (${s.trip.kind}) at ${ranged(s.trip.time, 's')}: ${tripText(s.trip, 'SI')}`
    : 'Done.';
  const doubt = s.energyHolds ? [] : [NOTICE_TEXTS.audit];
  return [scene.title, ...text, end, ...doubt].join('\n');
}
