import type { UnitSystem } from '../../../shared/core/unitSystem.ts';
import type { Study } from '../../../shared/study/candidate.ts';
import type { Confidence } from '../../../shared/verdict/confidence/confidence.ts';
import type { Verdict } from '../../../shared/verdict/judgement.ts';
import type { CandidateState } from '../../studyState/state.ts';

interface Pictures {
  readonly stage?: string;
  readonly [letter: string]: string | undefined;
}

export interface ReportInput {
  readonly study: Study;
  readonly units: UnitSystem;
  readonly candidates: readonly CandidateState[];
  /** Of the candidates that have an outcome, in their order. */
  readonly verdict: Verdict;
  /** With what probability the choice holds; null where it was not worked out. */
  readonly confidence: Confidence | null;
  /** Data URLs of pictures: `stage` shows all candidates, a letter one candidate. */
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
        `pictures.${name}: “${url.slice(0, 40)}” is not a picture. Allowed: a data URL of a PNG, JPEG or WebP.`,
      );
  }
  const { protocol } = new URL(link, 'https://here.invalid');
  if (!['https:', 'http:', 'file:'].includes(protocol))
    throw new RangeError(
      `link: “${link.slice(0, 40)}” is no address. Allowed: http, https, file, or relative.`,
    );
}
