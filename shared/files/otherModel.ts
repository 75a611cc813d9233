import { MODEL_VERSION } from '../core/version.ts';

/** Where every file that is written has it: right after its version. */
const ENTRY = /^\s*\{\s*"waybench"\s*:\s*"[\w ]+",\s*"version"\s*:\s*\d+,\s*"model"\s*:\s*(\d{1,9})\s*,/;

/** What has to be said of a file that was made with another version of the model; null: nothing, it was this one or is not stated. */
export function otherModelText(text: string): string | null {
  const model = Number(ENTRY.exec(text.slice(0, 400))?.[1] ?? MODEL_VERSION);
  return model === MODEL_VERSION
    ? null
    : `Made with model ${model}, opened with model ${MODEL_VERSION}: figures may differ from those that were seen when it was made.`;
}
