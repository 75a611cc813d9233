import { rounded, within } from '../../../shared/axis/loop/tunedValue.ts';
import { at } from '../../../shared/core/at.ts';
import { positionRate } from '../../../shared/core/crossChecks.ts';
import { loadSideMass, MODE_NUMBERS, motorSideMass, movedMass } from '../../../shared/core/movedMass.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import type { AxisFit, TriedShape } from '../../../shared/protocol/response.ts';
import { magnitude } from '../../math/complex.ts';
import { type AxisValues, packed, unpacked } from './axisShape.ts';
import { modelPlant } from './modelPlant.ts';
import {
  type FittedShape,
  fitShape,
  type PlantPoints,
  searchLink,
  searchMode,
  searchRigid,
} from './searchShape.ts';

/** What a fit may leave, RMS of logarithm and phase: beyond it the response is not that of this axis. */
const MAX_ERROR = 0.3;
/**
 * A shape with more parts has to lower the criterion by this ("very strong" evidence: Kass, Raftery, J. American Statistical
 * Association 90(430), 1995), and to leave no more than this share: a measurement is never free of errors that noise does not explain.
 */
const EVIDENCE = 10;
const WORTH = 0.7;

/**
 * The axis whose response comes closest, with as many resonances as the points justify: rigid, on a link, and with flexible parts.
 * In plain words why there is none.
 *
 * The shapes that are fitted leave out what moves a resonance by some per cent, the back-EMF for one. So the model of the whole axis,
 * with the values found, is fitted in the same way, and what that gets wrong is put right. Source: indirect inference, Gourieroux,
 * Monfort, Renault, J. Applied Econometrics 8(S1), 1993 (from memory).
 */
export function fitAxis(p: Parameters, points: PlantPoints): AxisFit | string {
  const { omega, plant } = points;
  const sizes = plant.map(magnitude);
  if (!sizes.every((size) => size > 0 && Number.isFinite(size)))
    return 'The response is zero or not finite in places: there is nothing to fit.';
  const inertias = omega.map((w, k) => at(sizes, k) * w * w).sort((a, b) => a - b);
  const total = 1 / at(inertias, Math.floor(inertias.length / 3));
  if (!(total > motorSideMass(p)))
    return 'The response belongs to a mass below that of the motor alone: check its unit, and which kind of response it is.';

  const tried = triedShapes(p, points, {
    tableMass: total - motorSideMass(p),
    delay: 0.5 / positionRate(p),
    link: null,
    modes: [],
  });
  const chosen = tried.reduce((simple, more) => (isWorthMore(simple, more) ? more : simple));
  if (chosen.error > MAX_ERROR)
    return 'Neither a rigid mass nor masses on springs have this response: check which kind of response it is, its columns, and that the gains on the bench are those it was measured with.';
  return axisFit(p, { ...chosen, values: putRight(p, points, chosen) }, tried);
}

/** Shapes with ever more parts, those without a link first; fewer parts stand before more. */
function triedShapes(p: Parameters, points: PlantPoints, start: AxisValues): FittedShape[] {
  const rigid = searchRigid(p, points, start);
  // The delay of a rigid mass would stand for the phase of the link.
  const linked = searchLink(p, points, rigid.values, start.delay);
  const chains = (linked ? [rigid, linked] : [rigid]).map((base) => {
    const chain = [base];
    for (const _ of MODE_NUMBERS) {
      const before = at(chain, chain.length - 1);
      const more = searchMode(p, points, before);
      if (!more) break;
      chain.push(more);
      if (!isWorthMore(before, more)) break;
    }
    return chain;
  });
  return chains.flat().sort((a, b) => partsOf(a) - partsOf(b));
}

const partsOf = ({ shape }: FittedShape) => shape.modes.length + (shape.hasLink ? 1 : 0);

function isWorthMore(simple: FittedShape, more: FittedShape): boolean {
  if (partsOf(more) === partsOf(simple)) return more.criterion < simple.criterion;
  return more.criterion < simple.criterion - EVIDENCE && more.error < WORTH * simple.error;
}

/** Values corrected by what the same fit makes of the model that has them. */
function putRight(p: Parameters, { omega }: PlantPoints, { shape, values }: FittedShape): AxisValues {
  const model = { ...p, ...changesOf(p, values) };
  const again = fitShape(model, { omega, plant: modelPlant(model, omega) }, shape, values);
  if (!Number.isFinite(again.error)) return values;
  const before = packed(values);
  const off = packed(again.values).map((value, k) => value - at(before, k));
  const right = Float64Array.from(before, (value, k) => value - at(off, k));
  // The delay is what the fit found: the model's own is contained in it.
  return { ...unpacked(shape, right), delay: values.delay };
}

function axisFit(p: Parameters, { values, error }: FittedShape, tried: readonly FittedShape[]): AxisFit {
  const motorMass = motorSideMass(p);
  const { tableMass, link } = values;
  const together = (motorMass * tableMass) / (motorMass + tableMass);
  const resonance = link && Math.sqrt(link.stiffness / together);
  return {
    mass: motorMass + tableMass,
    link:
      link && resonance !== null
        ? {
            ...link,
            resonance: resonance / (2 * Math.PI),
            dampingRatio: link.damping / (2 * together * resonance),
          }
        : null,
    modes: byFrequency(values).map(({ side, mass, omega, damping }) => ({
      side,
      mass,
      frequency: omega / (2 * Math.PI),
      dampingRatio: damping,
    })),
    delay: values.delay,
    error,
    tried: tried.map(
      ({ shape, ...found }): TriedShape => ({
        link: shape.hasLink,
        modes: shape.modes.length,
        error: found.error,
        criterion: found.criterion,
      }),
    ),
    changes: changesOf(p, values),
  };
}

const byFrequency = ({ modes }: AxisValues) => [...modes].sort((a, b) => a.omega - b.omega);

/** The values as rows of the table of parameters; flexible parts that were not found are switched off. */
function changesOf(p: Parameters, values: AxisValues): ParameterChanges {
  const modes = byFrequency(values);
  return {
    ...massChange(p, motorSideMass(p) + values.tableMass),
    ...(values.link && {
      linkStiffness: rounded('linkStiffness', values.link.stiffness),
      linkDamping: rounded('linkDamping', values.link.damping),
    }),
    ...Object.assign(
      {},
      ...MODE_NUMBERS.map((n, k) => {
        const mode = modes[k];
        if (!mode) return p[`mode${n}`] === 'off' ? {} : { [`mode${n}`]: 'off' };
        return {
          [`mode${n}`]: mode.side,
          [`mode${n}Mass`]: rounded(`mode${n}Mass`, mode.mass),
          [`mode${n}Frequency`]: within(`mode${n}Frequency`, mode.omega / (2 * Math.PI)),
          [`mode${n}Damping`]: rounded(`mode${n}Damping`, mode.damping),
        };
      }),
    ),
  };
}

/** The payload that makes the axis as heavy as this; the table gives way where the payload alone cannot. */
function massChange(p: Parameters, mass: number) {
  const missing = mass - movedMass(p);
  const payload = Math.max(p.payload + missing, 0);
  const rest = loadSideMass(p) + missing - payload;
  return {
    payload: rounded('payload', payload),
    ...(payload === 0 && { tableMass: rounded('tableMass', rest) }),
  };
}
