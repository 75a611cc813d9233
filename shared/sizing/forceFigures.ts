import { continuousForce } from '../axis/motor.ts';
import { at } from '../core/at.ts';
import { inUnit, ranged } from '../core/format.ts';
import { unitSystem } from '../core/unitSystem.ts';
import { fromSI, printedUnit, UNITS, type Unit } from '../core/units.ts';
import { swingSquare } from './demand.ts';
import { integral, type Stretch, squareIntegral, totalTime } from './duty.ts';
import { forceAt } from './electric.ts';
import type { CandidateFacts } from './facts.ts';
import { beyondText, type Figured, limited, plain } from './figure.ts';

/** Force at the motor, and what the motors can give. */
export function forceFigures(facts: CandidateFacts): Figured[] {
  return [friction(facts), peak(facts), peakUse(facts), effective(facts), continuousUse(facts)];
}

function friction({ p, loads }: CandidateFacts): Figured {
  const value = loads.guide + loads.drag;
  const attracted = p.attraction > 0 ? ', loaded by the attraction of the magnets' : '';
  return plain({
    id: 'friction',
    label: 'Dry friction',
    symbol: 'F_c',
    value,
    unit: 'N',
    formula: 'F_c = μ_c |m_2 g cos θ + N F_att| + F_c0 + N F_h + F_n',
    numbers:
      `${inUnit(p.frictionCoefficient, '')} · ${ranged(loads.normal, 'N')} + ${ranged(p.sealFriction, 'N')} + ` +
      `${ranged(loads.drag, 'N')} = ${ranged(value, 'N')}`,
    note: `Guide${attracted}, seals, hysteresis of iron (F_h), nut and bearings (F_n). Breakaway friction and the Stribeck effect at creep speed are neglected.`,
  });
}

/** Forces added up in words, those that are nothing left out; the first stands even then. */
function sum(first: string, others: readonly number[]): string {
  const signed = (force: number) => `${force < 0 ? '−' : '+'} ${ranged(Math.abs(force), 'N')}`;
  return [first, ...others.filter((force) => force !== 0).map(signed)].join(' ');
}

/** Pounds times inches per square second are no pounds-force before they are divided by g_c. */
function asForce(massTimesAcceleration: string): string {
  if (unitSystem() === 'metric') return massTimesAcceleration;
  const perForce = UNITS.lbf.factor / (UNITS.lb.factor * UNITS.in.factor);
  return `${massTimesAcceleration}/(${inUnit(perForce, '', 4)} lb·in/(lbf·s²))`;
}

function peak({ loads, worst, peakForce }: CandidateFacts): Figured {
  const { point, direction, feed, process } = worst;
  const inertia = asForce(`${ranged(loads.mass, 'kg')} · ${inUnit(point.acceleration, 'm/s²', 4)}`);
  const dry = direction * (loads.guide + loads.drag);
  const others = [loads.viscous * point.speed, dry, loads.holding, direction * feed - process];
  const cogging = peakForce - Math.abs(worst.force);
  return plain({
    id: 'peakForce',
    label: 'Peak force',
    symbol: 'F_pk',
    value: peakForce,
    unit: 'N',
    formula: 'F_pk = max |M a + d v ± F_c + F_hold + F_P| + Σ A_k',
    numbers: `${sum(`|${sum(inertia, others)}|`, [cogging])} = ${ranged(peakForce, 'N')}`,
    note: 'The largest in the cycle, with the process force at its worst and every cogging term at its peak. What the control loop adds while settling is neglected.',
  });
}

function peakUse({ p, electrics, magnet, peakForce }: CandidateFacts): Figured {
  const max = forceAt(electrics, p.peakCurrent, magnet);
  const value = peakForce / max;
  const saturates = p.saturationCurrent > 0;
  return limited(
    {
      id: 'peakUtilisation',
      label: 'Peak force, share of what the drive gives',
      symbol: 'F_pk/F_max',
      value,
      unit: '%',
      formula: saturates
        ? 'F_pk/F_max, F_max = K_f i_pk/√(1 + (i_pk/N i_sat)²)'
        : 'F_pk/F_max, F_max = K_f i_pk',
      numbers:
        `F_max = ${inUnit(electrics.forcePerAmp * magnet, 'N/A')} peak · ${ranged(p.peakCurrent, 'A peak')}` +
        `${saturates ? `/√(1 + (${ranged(p.peakCurrent, 'A peak')}/${ranged(p.motorCount * p.saturationCurrent, 'A peak')})²)` : ''} = ${ranged(max, 'N')}; ` +
        `${ranged(peakForce, 'N')}/${ranged(max, 'N')} = ${inUnit(value, '%')}`,
      note: 'K_f here is force per ampere of amplitude at room temperature; the overload time of the drive is taken as long enough for one ramp.',
    },
    { value: 1, side: 'max' },
    beyondText(
      peakForce,
      max,
      'N',
      (own, most) => `The moves need ${own}, but the motors give ${most} at the peak current of the drive.`,
    ),
  );
}

/** So many integrals are written out; the others are added up. */
const MAX_SHOWN = 6;

/** ∫F² dt of each move and each dwell, N²·s. */
function squareTerms({ motion, forces }: CandidateFacts): number[] {
  const sums: number[] = [];
  motion.forEach(({ move, direction }, k) => {
    const previous = motion[k - 1];
    const isNew = previous?.move !== move || (previous.direction === 0) !== (direction === 0);
    const sum = isNew ? 0 : (sums.pop() ?? 0);
    sums.push(sum + squareIntegral(at(forces, k)));
  });
  return sums;
}

/** The stretches of the first move, as someone would write them down to check the sum. */
function firstMove({ motion, forces }: CandidateFacts): string {
  return forces
    .filter((_, k) => at(motion, k).move === 0 && at(motion, k).direction !== 0)
    .map(
      ({ start, middle, end, time }: Stretch) =>
        `${[start, middle, end].map((force) => inUnit(force, 'N')).join(' → ')} in ${ranged(time, 's')}`,
    )
    .join('; ');
}

function effective(facts: CandidateFacts): Figured {
  const { loads, moving, forces, rmsForce } = facts;
  const cycle = totalTime(forces);
  const swing = swingSquare(loads, moving);
  const bare = (value: number, unit: Unit) => inUnit(fromSI(value, printedUnit(unit)), '');
  const sums = squareTerms(facts).map((sum) => bare(sum, 'N²·s'));
  const shown = sums.length > MAX_SHOWN ? [...sums.slice(0, MAX_SHOWN), '…'] : sums;
  const stretches = firstMove(facts);
  return plain({
    id: 'rmsForce',
    label: 'RMS force',
    symbol: 'F_rms',
    value: rmsForce,
    unit: 'N',
    formula:
      'F_rms = √(Σ∫F² dt/t_cycle + F_s²), ∫F² dt = t (2F_1² + 8F_2² + 2F_3² + 2F_1·F_2 + 2F_2·F_3 − F_1·F_3)/15 over each stretch',
    numbers:
      `√((${shown.join(' + ')}) ${printedUnit('N²·s')}/${ranged(cycle, 's')}${swing > 0 ? ` + ${inUnit(swing, 'N²')}` : ''}) = ${ranged(rmsForce, 'N')}` +
      (stretches === '' ? '' : `; the first move: ${stretches}`),
    note: 'One term for each move and each standstill. F_1, F_2, F_3: at start, middle and end of a stretch of constant jerk. F_s² is half the sum of the squared cogging terms during motion, plus the mean square of the alternating process force. Cogging held at standstill depends on position and is neglected.',
  });
}

function continuousUse({ p, rmsForce, forces }: CandidateFacts): Figured {
  const max = continuousForce(p);
  const value = rmsForce / max;
  const average = forces.reduce((sum, each) => sum + integral(each), 0) / totalTime(forces);
  return limited(
    {
      id: 'continuousUtilisation',
      label: 'RMS force, share of the continuous force',
      symbol: 'F_rms/F_cont',
      value,
      unit: '%',
      formula: 'F_rms/(N F_cont)',
      numbers: `${ranged(rmsForce, 'N')}/(${p.motorCount} · ${ranged(p.continuousForce, 'N')}) = ${inUnit(value, '%')}`,
      note:
        `The continuous force heats the winding to its limit at standstill, in air of ${inUnit(22, '°C', 2)} without coolant; the winding temperature below is for the room of the job.` +
        (Math.abs(average) > 0.3 * rmsForce ? ' Most of it is holding force.' : ''),
    },
    { value: 1, side: 'max' },
    beyondText(
      rmsForce,
      max,
      'N',
      (own, most) => `The duty needs ${own} RMS, but the continuous force of the motors is ${most}.`,
    ),
  );
}
