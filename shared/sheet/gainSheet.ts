import { coggingWarnings } from '../axis/coggingWarnings.ts';
import type { Scene } from '../core/scene.ts';
import { onPage, sentenceText } from '../core/sentence.ts';
import { type Tuning, tuningOf } from '../core/tuning.ts';
import { MODEL_VERSION, VERSION_TEXT } from '../core/version.ts';
import type { MoveFigures, Notice, Trip } from '../protocol/axis.ts';
import { type AskedOfSheet, askedSection } from './askedRows.ts';
import { basisOf } from './basis.ts';
import { cascadeSection } from './cascadeRows.ts';
import { coggingSection } from './coggingRows.ts';
import { currentLoopSection } from './currentLoopRows.ts';
import { filterSections } from './filterRows.ts';
import { gainSection } from './gainRows.ts';
import { limitSection } from './limitRows.ts';
import { type LoopOfSheet, marginSection } from './marginRows.ts';
import { moveSection } from './moveRows.ts';
import { assumptionTexts, cautionTexts, runWarnings, warningTexts } from './notes.ts';
import { rateSection } from './rateRows.ts';
import { rotarySection } from './rotaryRows.ts';
import type { SheetSection } from './row.ts';
import { type ScaledGain, scaledGains } from './scaledGains.ts';
import { shapingSection } from './shapingRows.ts';
import { timeSection } from './timeRows.ts';

export const GAIN_SHEET_VERSION = 1;

/**
 * Everything that is needed to enter the tuning of a scene into whatever drive arrives: gains in SI and in the scalings that drives
 * use, each with its formula, with assumptions, warnings and cautions. Plain data; its JSON is the file.
 */
export interface GainSheet {
  readonly waybench: 'gain sheet';
  readonly version: number;
  readonly model: number;
  readonly madeBy: string;
  readonly title: string;
  /** The tuning in SI, unrounded: the only part of the sheet that is read back. */
  readonly parameters: Tuning;
  readonly readBack: string;
  /** Reasons not to use these gains; shown first. */
  readonly warnings: readonly string[];
  readonly cautions: readonly string[];
  readonly assumptions: readonly string[];
  readonly sections: readonly SheetSection[];
  /** Gains of the position loop per metre, count, millisecond and sample, in newtons, amperes and per cent. */
  readonly scaled: readonly ScaledGain[];
}

const READ_BACK = 'Only the values under "parameters" are read back. All others are calculated from them.';

/** What is known of the run that the gains were tried in. */
export interface SheetRun {
  /** A move made with the gains. */
  readonly move?: MoveFigures | null;
  /** What keeps the drive from following its command at present, and why it stopped itself. */
  readonly notices?: readonly Notice[];
  readonly trip?: Trip | null;
  /** What the drive is based on, where it was edited. */
  readonly drive?: string | null;
  /** What pretuning was asked for, where the gains come from it. */
  readonly asked?: AskedOfSheet | null;
}

/** `loops` are analyses of this tuning, each at its operating point. */
export function gainSheet(
  scene: Scene,
  {
    loops = [],
    move = null,
    notices = [],
    trip = null,
    drive = null,
    asked = null,
  }: SheetRun & {
    loops?: readonly LoopOfSheet[];
  } = {},
): GainSheet {
  const p = scene.parameters;
  const basis = basisOf(p);
  const rotary = rotarySection(p, basis);
  return {
    waybench: 'gain sheet',
    version: GAIN_SHEET_VERSION,
    model: MODEL_VERSION,
    madeBy: `Waybench ${VERSION_TEXT}`,
    title: scene.title,
    parameters: tuningOf(p),
    readBack: READ_BACK,
    warnings: [
      ...warningTexts(p, loops),
      ...coggingWarnings(scene).map((warning) => sentenceText(warning, onPage('metric'))),
      ...runWarnings(p, { move, notices, trip }),
    ],
    cautions: cautionTexts(p),
    assumptions: [...assumptionTexts(scene, basis), ...(drive === null ? [] : [`Drive: ${drive}.`])],
    sections: [
      gainSection(p),
      cascadeSection(p, basis),
      timeSection(p, basis),
      ...(rotary ? [rotary] : []),
      ...filterSections(p, basis),
      shapingSection(p, basis),
      coggingSection(scene),
      currentLoopSection(p, basis),
      rateSection(p, basis),
      limitSection(p, basis),
      ...(asked ? [askedSection(asked, loops)] : []),
      ...loops.map(marginSection),
      ...(move ? [moveSection(move, p)] : []),
    ],
    scaled: scaledGains(p, basis),
  };
}
