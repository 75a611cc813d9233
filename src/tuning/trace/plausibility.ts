import { motorConstants } from '../../../shared/axis/motor.ts';
import { ranged } from '../../../shared/core/format.ts';
import { motorSideMass } from '../../../shared/core/movedMass.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { FitResult } from '../../../shared/protocol/fit.ts';
import type { Trace } from '../../../shared/protocol/trace.ts';
import type { TraceMapping } from './traceFile.ts';
import type { TraceTable } from './traceTable.ts';

/** A current this far above the peak current of the drive on the bench is not one of its currents. */
const CURRENT_SPARE = 1.5;
/** A mass this far below that of the motor alone is not the mass of the axis. */
const MASS_SPARE = 0.9;
/** Sliding friction of a guide that no motor of this size would be put to, as a share of its peak force. */
const MOST_FRICTION = 0.5;

/** The column of a quantity as its file names it. */
function columnText(
  quantity: 'position' | 'current' | 'currentCommand',
  table: TraceTable,
  mapping: TraceMapping,
) {
  const use = mapping[quantity];
  const name = use && table.columns[use.column]?.name;
  return use ? `column ${use.column + 1}, “${name}”, read in ${use.unit}${use.rms ? ' RMS' : ''}` : '';
}

/**
 * Why a recording cannot be of the axis on the bench, one sentence each with the likely cause; none where it can. Sources: the limits of
 * the motor and drive on the bench, and that a fitted mass includes the motor's own.
 */
export function implausible(
  { estimates }: Pick<FitResult, 'estimates'>,
  trace: Pick<Trace, 'current' | 'currentCommand'>,
  p: Parameters,
  table: TraceTable,
  mapping: TraceMapping,
): string[] {
  const currentName = trace.current ? 'current' : 'currentCommand';
  const currentColumn = columnText(currentName, table, mapping);
  const positionColumn = columnText('position', table, mapping);
  let largest = 0;
  for (const value of trace.current ?? trace.currentCommand ?? new Float64Array())
    if (Math.abs(value) > largest) largest = Math.abs(value);
  const problems: string[] = [];
  if (largest > CURRENT_SPARE * p.peakCurrent)
    problems.push(
      `The recorded current reaches ${ranged(largest, 'A')} peak, and the drive on the bench gives ${ranged(p.peakCurrent, 'A')}. The unit of the current is probably wrong: ${currentColumn}.`,
    );
  const { mass, coulomb } = estimates;
  if (mass && mass.high < MASS_SPARE * motorSideMass(p))
    problems.push(
      `The fitted mass, ${ranged(mass.value, 'kg')}, is below that of the motor alone, ${ranged(motorSideMass(p), 'kg')}. The unit of the position is probably too large, or that of the current too small: ${positionColumn}; ${currentColumn}.`,
    );
  const peakForce = motorConstants(p).forcePerAmp * p.peakCurrent;
  if (coulomb && coulomb.low > MOST_FRICTION * peakForce)
    problems.push(
      `The fitted sliding friction, ${ranged(coulomb.value, 'N')}, is more than half of the peak force of the motor, ${ranged(peakForce, 'N')}. The unit of the current is probably too large, or the axis pushes against something: ${currentColumn}.`,
    );
  return problems;
}
