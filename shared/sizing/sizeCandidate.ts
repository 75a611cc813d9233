import { ranged } from '../core/format.ts';
import type { Scene } from '../core/scene.ts';
import { signOfLife } from '../core/signOfLife.ts';
import type { Job } from '../study/job.ts';
import { electricFigures } from './electricFigures.ts';
import { envelopeOf } from './envelope.ts';
import { type CandidateFacts, candidateFacts } from './facts.ts';
import { beyondText, type Figured, limited } from './figure.ts';
import { forceFigures } from './forceFigures.ts';
import { heatFigures } from './heatFigures.ts';
import { holdingFigures } from './holdingFigures.ts';
import { motionFigures } from './motionFigures.ts';
import { nutFigures } from './nutFigures.ts';
import { screwFigures, stiffness } from './screwFigures.ts';
import type { Sizing } from './sizing.ts';
import { supplyFigures } from './supplyFigures.ts';
import { trackFigures } from './trackFigures.ts';

/** Counts of the encoder to the window at least; ten are usual. Common practice, no source. */
const COUNTS_PER_WINDOW = 5;

/** What pencil and paper say of a drive on a job; `scene` is its candidate as `candidateScene` makes it. */
export function sizeCandidate(job: Job, scene: Scene): Sizing {
  signOfLife();
  const facts = candidateFacts(job, scene);
  const figured = [
    ...motionFigures(facts),
    ...forceFigures(facts),
    ...electricFigures(facts),
    ...heatFigures(facts),
    ...supplyFigures(facts),
    ...screwFigures(facts),
    ...nutFigures(facts),
    ...holdingFigures(facts),
    ...trackFigures(facts),
    stiffness(facts),
    resolution(facts),
  ];
  const beyond = figured.filter(({ standing }) => standing === 'beyond');
  return {
    figures: figured.map(({ reason, ...figure }) => figure),
    envelope: envelopeOf(facts),
    passes: beyond.length === 0,
    // A headroom says nothing that its figure has not said.
    reasons: beyond.map(({ reason }) => reason).filter((reason) => reason !== ''),
  };
}

function resolution({ p, job }: CandidateFacts): Figured {
  const { window } = job.values;
  const limit = window / COUNTS_PER_WINDOW;
  return limited(
    {
      id: 'resolution',
      label: 'Resolution of the encoder',
      symbol: 'q',
      value: p.encoderResolution,
      unit: 'nm',
      formula: `q ≤ w/${COUNTS_PER_WINDOW}`,
      numbers: `${ranged(p.encoderResolution, 'm')} ≤ ${ranged(window, 'm')}/${COUNTS_PER_WINDOW} = ${ranged(limit, 'm')}`,
      note: `At least five counts in the settling window, better ten (common practice, no source).${p.encoderSide === 'motor' ? ' The encoder sits on the motor: it does not see screw and nut.' : ''}`,
    },
    { value: limit, side: 'max' },
    beyondText(
      p.encoderResolution,
      limit,
      'm',
      (own, most) => `One encoder count is ${own}, but the window of ${ranged(window, 'm')} needs ${most}.`,
    ),
  );
}
