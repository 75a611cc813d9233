import { inUnit, ranged } from '../core/format.ts';
import { siUnit } from '../core/units.ts';
import { LOOP_FIGURE_NAMES, LOOP_FIGURES, type LoopFigure, loopFigureText } from '../figures/loopFigures.ts';
import type { LoopFigures, OperatingPoint } from '../protocol/analysis.ts';
import { type SheetRow, type SheetSection, setRow } from './row.ts';

/** An analysed loop: its figures apply at this operating point and with these gains. */
export interface LoopOfSheet {
  readonly point: OperatingPoint;
  readonly figures: LoopFigures;
}

export function marginSection({ point, figures }: LoopOfSheet): SheetSection {
  return {
    id: 'margins',
    title: `Margins of the position loop, guide ${point.friction}`,
    text: [
      pointText(point),
      figures.stable
        ? 'The loop is stable: every closed-loop eigenvalue lies inside the unit circle.'
        : 'The loop is UNSTABLE at this operating point. The figures below describe its frequency response. It has no margins.',
      ...(figures.conditional
        ? ['Too low a gain would also make it unstable: do not lower all gains together while it runs.']
        : []),
    ],
    rows: [
      setRow('Stable', '', figures.stable ? 'yes' : 'no'),
      setRow('Largest magnitude of a closed-loop eigenvalue', '', figures.spectralRadius),
      ...LOOP_FIGURE_NAMES.map((name) => marginRow(name, figures)),
      peakSensitivityRow(figures),
    ],
  };
}

function marginRow(name: keyof typeof LOOP_FIGURES, figures: LoopFigures): SheetRow {
  const figure: LoopFigure = LOOP_FIGURES[name];
  const found = figure.of(figures);
  return {
    ...setRow(figure.label, '', found?.value ?? figure.absent, found ? siUnit(figure.unit) : ''),
    text: loopFigureText(name, figures),
    how: figure.definition,
  };
}

/** What a pretuning is asked for, and what a drive's own analysis shows: the modulus margin the other way up. */
function peakSensitivityRow({ modulusMargin: { value, frequency } }: LoopFigures): SheetRow {
  const peak = value > 0 ? 1 / value : 'unlimited';
  return {
    ...setRow('Peak sensitivity', 'M_S', peak),
    text: value > 0 ? `${inUnit(1 / value, '')} at ${ranged(frequency, 'Hz')}` : 'unlimited',
    how: 'Peak of |S| over all frequencies, the inverse of the modulus margin. 2 or less is common practice.',
  };
}

function pointText(point: OperatingPoint): string {
  const friction =
    point.friction === 'presliding'
      ? 'guide presliding (friction acts as a spring)'
      : 'guide sliding (dry friction as a constant force)';
  const motion = point.speed === 0 ? 'at standstill' : `at ${ranged(point.speed, 'm/s')}`;
  const load = point.loadForce === 0 ? 'no load force' : `load force ${ranged(point.loadForce, 'N')}`;
  return (
    `Operating point: table at ${ranged(point.position, 'm')}, ${motion}, ${load}, ` +
    `winding at ${ranged(point.windingTemperature, '°C')}, ${friction}. Margins differ at other positions, loads and temperatures.`
  );
}
