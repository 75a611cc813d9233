import type { MoveFigures } from './protocol.ts';
import type { Scene } from './scene.ts';
import { basisOf } from './sheet/basis.ts';
import { cascadeSection } from './sheet/cascadeRows.ts';
import { currentLoopSection } from './sheet/currentLoopRows.ts';
import { filterSections } from './sheet/filterRows.ts';
import { gainSection } from './sheet/gainRows.ts';
import { limitSection } from './sheet/limitRows.ts';
import { type LoopOfSheet, marginSection } from './sheet/marginRows.ts';
import { moveSection } from './sheet/moveRows.ts';
import { assumptionTexts, cautionTexts, warningTexts } from './sheet/notes.ts';
import { rateSection } from './sheet/rateRows.ts';
import { rotarySection } from './sheet/rotaryRows.ts';
import type { SheetSection } from './sheet/row.ts';
import { type ScaledGain, scaledGains } from './sheet/scaledGains.ts';
import { timeSection } from './sheet/timeRows.ts';
import { type Tuning, tuningOf } from './tuning.ts';
import { WAYBENCH_VERSION } from './version.ts';

export const GAIN_SHEET_VERSION = 1;

/**
 * Everything that is needed to enter the tuning of a scene into whatever drive arrives: gains in SI and in the scalings that drives
 * use, each with its formula, and what has to be known and minded beside them. Plain data; its JSON is the file.
 */
export interface GainSheet {
  readonly waybench: 'gain sheet';
  readonly version: number;
  readonly madeBy: string;
  readonly title: string;
  /** The tuning in SI, unrounded. This, and nothing else of the sheet, is read back. */
  readonly parameters: Tuning;
  readonly readBack: string;
  /** What speaks against these very gains; above everything else. */
  readonly warnings: readonly string[];
  readonly cautions: readonly string[];
  readonly assumptions: readonly string[];
  readonly sections: readonly SheetSection[];
  /** Gains of the position loop per metre, count, millisecond and sample, in newtons, amperes and per cent. */
  readonly scaled: readonly ScaledGain[];
}

const READ_BACK = 'Only the values under "parameters" are read back. All others are worked out from them.';

/** `loops` are analyses of this very tuning, each at its operating point; `move` a move made with it. */
export function gainSheet(
  scene: Scene,
  { loops = [], move = null }: { loops?: readonly LoopOfSheet[]; move?: MoveFigures | null } = {},
): GainSheet {
  const p = scene.parameters;
  const basis = basisOf(p);
  const rotary = rotarySection(p, basis);
  return {
    waybench: 'gain sheet',
    version: GAIN_SHEET_VERSION,
    madeBy: `Waybench ${WAYBENCH_VERSION}`,
    title: scene.title,
    parameters: tuningOf(p),
    readBack: READ_BACK,
    warnings: warningTexts(p, loops),
    cautions: cautionTexts(p),
    assumptions: assumptionTexts(scene, basis),
    sections: [
      gainSection(p),
      cascadeSection(p, basis),
      timeSection(p, basis),
      ...(rotary ? [rotary] : []),
      ...filterSections(p, basis),
      currentLoopSection(p, basis),
      rateSection(p, basis),
      limitSection(p, basis),
      ...loops.map(marginSection),
      ...(move ? [moveSection(move, p)] : []),
    ],
    scaled: scaledGains(p, basis),
  };
}
