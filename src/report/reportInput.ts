import type { Study } from '../../shared/study/lane.ts';
import type { Verdict } from '../../shared/study/verdict.ts';
import type { UnitSystem } from '../../shared/units.ts';
import type { LaneState } from '../study/state.ts';

export interface Pictures {
  readonly stage?: string;
  readonly [letter: string]: string | undefined;
}

export interface ReportInput {
  readonly study: Study;
  readonly units: UnitSystem;
  readonly lanes: readonly LaneState[];
  /** Of the lanes that have an outcome, in their order. */
  readonly verdict: Verdict;
  /** Data URLs of pictures: `stage` shows all lanes, a letter one lane. */
  readonly pictures: Pictures;
  /** Address that opens the study again. */
  readonly link: string;
  /** Text of the study file. */
  readonly studyFile: string;
  readonly version: string;
  /** Date that stands on it. */
  readonly printed?: string;
}

/** What the page will show and follow must be harmless: it is given to people who did not make it. */
export function checkInput({ pictures, link }: ReportInput): void {
  for (const [name, url] of Object.entries(pictures)) {
    if (url !== undefined && !/^data:image\/(?:png|jpeg|webp);base64,[A-Za-z0-9+/=]+$/.test(url))
      throw new RangeError(
        `pictures.${name}: “${url.slice(0, 40)}” is no picture. Allowed: a data URL of a PNG, JPEG or WebP.`,
      );
  }
  const { protocol } = new URL(link, 'https://here.invalid');
  if (!['https:', 'http:', 'file:'].includes(protocol))
    throw new RangeError(
      `link: “${link.slice(0, 40)}” is no address. Allowed: http, https, file, or relative.`,
    );
}
