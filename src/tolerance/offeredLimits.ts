import { inUnit, ranged } from '../../shared/core/format.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { Limits, MachineResult } from '../../shared/tolerance/runFigures.ts';

/** What a machine may take or err beyond the one on the bench, as a share, and as a time that no one waits for, s. */
const MARGIN = 0.1;
const LEAST_TIME = 1e-3;
/** Digits that a field shows, so that the limit is what is read. */
const DIGITS = 3;

/** Limits to begin with, and in words where they come from. */
interface LimitOffer {
  readonly limits: Limits;
  readonly text: string;
}

const MARGIN_TEXT = inUnit(MARGIN, '%', 2);
const OWN = 'Enter limits of your own where the job asks for something else.';

/**
 * What the machine on the bench comes to, and a margin: with the whole dwell to settle in, every machine is good and nothing is
 * learned. A program without arrivals is judged by its following error.
 */
export function offeredLimits({ parameters: p, moves }: Scene, { trip, figures }: MachineResult): LimitOffer {
  if (p.drive !== 'on') return { limits: {}, text: `The drive is off: no limit is offered. ${OWN}` };
  if (trip !== null)
    return { limits: {}, text: `The machine on the bench trips as it is: no limit is offered. ${OWN}` };
  const dwell = dwellOf(p, moves);
  if (dwell === null) return byError(figures);
  const window = `±${ranged(p.window, 'm')}`;
  const { settlingTime } = figures;
  if (settlingTime === null)
    return {
      limits: { settlingTime: dwell },
      text: `The machine on the bench does not settle into ${window} within its dwell of ${ranged(dwell, 's')}, which is offered as the limit. ${OWN}`,
    };
  const limit = Math.min(rounded(Math.max((1 + MARGIN) * settlingTime, settlingTime + LEAST_TIME)), dwell);
  const itself = settlingTime === 0 ? 'as soon as the command ends' : `in ${ranged(settlingTime, 's')}`;
  return {
    limits: { settlingTime: limit },
    text: `The machine on the bench settles into ${window} ${itself}. Offered as the limit: ${ranged(limit, 's')}, which is ${MARGIN_TEXT} more, at least 1 ms, within the dwell of ${ranged(dwell, 's')}. ${OWN}`,
  };
}

function byError({ rmsError }: MachineResult['figures']): LimitOffer {
  if (rmsError === null || rmsError === 0) return { limits: {}, text: OWN };
  const limit = rounded((1 + MARGIN) * rmsError);
  return {
    limits: { rmsError: limit },
    text: `This program has no arrival to settle after. The machine on the bench has an RMS following error of ${ranged(rmsError, 'm')}. Offered as the limit: ${ranged(limit, 'm')}, which is ${MARGIN_TEXT} more. ${OWN}`,
  };
}

function rounded(value: number): number {
  return Number(value.toPrecision(DIGITS));
}

/** The shortest standstill after a move, s; null where no move ends in one that counts. */
function dwellOf(p: Scene['parameters'], moves: Scene['moves']): number | null {
  switch (p.program) {
    case 'shuttle':
    case 'staircase':
    case 'step':
      return p.dwell;
    case 'list':
      return moves.length > 0 ? Math.min(...moves.map(({ dwell }) => dwell)) : null;
    default:
      return null;
  }
}
