import { nominalDiameter } from '../axis/screw.ts';
import { at } from '../core/at.ts';
import { inUnit, ranged, shortest } from '../core/format.ts';
import { toSI } from '../core/units.ts';
import { speedDuty } from './demand.ts';
import { totalTime, valueAt } from './duty.ts';
import type { CandidateFacts } from './facts.ts';
import { beyondText, type Figured, limited } from './figure.ts';
import { peakSpeed } from './motionFigures.ts';
import { nutThrust } from './nutThrust.ts';
import { LIFE_PRELOAD, nutLife, pairLife, preloadedPair } from './shaft.ts';

/** Nominal diameter times speed that the return of the balls takes, m/s, and that of rolled and ground nuts. Common practice, no source. */
const [DIAMETER_SPEED, ROLLED, GROUND] = [toSI(1e5, 'mm/min'), toSI(7e4, 'mm/min'), toSI(1.5e5, 'mm/min')];
/** The same as the speed of the ball circle, m/s. */
const CIRCLE_SPEED = Math.PI * DIAMETER_SPEED;

/** What the balls of a nut have to stand; nothing where its shaft or its rating is not stated. */
export function nutFigures(facts: CandidateFacts): Figured[] {
  const { p } = facts;
  if (p.lead === 0 || p.screwRigidity === 0) return [];
  // Balls that do not roll do not wear.
  const rolls = facts.motion.some(({ direction }) => direction !== 0);
  return p.nutRating > 0 && rolls ? [ballSpeed(facts), life(facts)] : [ballSpeed(facts)];
}

function ballSpeed({ p, motion }: CandidateFacts): Figured {
  const speed = Math.abs(peakSpeed(motion).point.speed);
  const diameter = nominalDiameter(p);
  const value = (Math.PI * diameter * speed) / p.lead;
  return limited(
    {
      id: 'ballSpeed',
      label: 'Speed of the ball circle',
      symbol: 'v_b',
      value,
      unit: 'm/s',
      formula: 'v_b = π d_0 v_pk/p_h',
      numbers: `π · ${ranged(diameter, 'm')} · ${ranged(speed, 'm/s')}/${ranged(p.lead, 'm')} = ${ranged(value, 'm/s')}`,
      note: `The return of the balls takes about ${shortest(DIAMETER_SPEED, 'mm/min', 2)} of nominal diameter times speed (rolled ${shortest(ROLLED, 'mm/min', 2)}, ground up to ${shortest(GROUND, 'mm/min', 2)}; common practice, no source). d_0: nominal diameter, root diameter over 0.85.`,
    },
    { value: CIRCLE_SPEED, side: 'max' },
    beyondText(
      value,
      CIRCLE_SPEED,
      'm/s',
      (own, most) => `The balls of the nut run at ${own}, but their return takes ${most}.`,
    ),
  );
}

const POINTS = 4;

/** Cubic means of the loads on the two halves of the nut, N, weighted by way; and the way of a cycle, m. */
function nutLoads(facts: CandidateFacts) {
  const { p, motion, forces } = facts;
  const preload = LIFE_PRELOAD * p.nutRating;
  const speeds = speedDuty(motion);
  let [way, one, two] = [0, 0, 0];
  for (const [k, { time, points, direction }] of motion.entries()) {
    const [start, , end] = points;
    for (let point = 0; point < POINTS; point++) {
      const share = (point + 0.5) / POINTS;
      const speed = valueAt(at(speeds, k), share);
      const acceleration = start.acceleration + share * (end.acceleration - start.acceleration);
      const setpoint = { speed: direction * speed, acceleration };
      const { thrust } = nutThrust(facts, valueAt(at(forces, k), share), setpoint, direction);
      const { loaded, other } = preloadedPair(Math.abs(thrust), preload);
      const step = (speed * time) / POINTS;
      way += step;
      one += (thrust > 0 ? loaded : other) ** 3 * step;
      two += (thrust > 0 ? other : loaded) ** 3 * step;
    }
  }
  return { way, one: Math.cbrt(one / way), two: Math.cbrt(two / way) };
}

function life(facts: CandidateFacts): Figured {
  const { p, forces, job } = facts;
  const { way, one, two } = nutLoads(facts);
  const turns = pairLife(nutLife(p.nutRating, one), nutLife(p.nutRating, two));
  const cycle = totalTime(forces);
  const value = ((turns * p.lead) / way) * cycle;
  const { years, days, dailyTime } = job.values;
  const limit = years * days * dailyTime;
  return limited(
    {
      id: 'nutLife',
      label: 'Life of the ball nut under this duty',
      symbol: 'L_h',
      value,
      unit: 'h',
      formula: 'L_h = L p_h t_cycle/s_cycle, L = (L_1^(−10/9) + L_2^(−10/9))^(−9/10), L_k = 10⁶ (C_a/F_mk)³',
      numbers:
        `C_a = ${inUnit(p.nutRating, 'kN')}, F_m1 = ${ranged(one, 'N')}, F_m2 = ${ranged(two, 'N')}: L = ${inUnit(turns / 1e6, '')} · 10⁶ turns of ${ranged(p.lead, 'm')}; ` +
        `${ranged(way, 'm')} in ${ranged(cycle, 's')} = ${inUnit(value, 'h')}`,
      note: `Nine nuts in ten reach it (ISO 3408-5). F_m: cubic mean of the thrust on each half of a nut preloaded to ${inUnit(LIFE_PRELOAD, '%')} of C_a. Lubrication and dirt are not considered. The limit is the hours of the years that the job counts.`,
    },
    { value: limit, side: 'min' },
    beyondText(
      value,
      limit,
      'h',
      (own, least) => `The ball nut lasts ${own} under this duty, but the job counts ${least}.`,
    ),
  );
}
