/** Of the product, as in package.json: what the figures of a sheet come from. */
export const WAYBENCH_VERSION = '0.1.0';

/** Of the model: one more with every change after which the same scene gives other figures. Files carry it. */
export const MODEL_VERSION = 2;

/** Both, as they are read. */
export const VERSION_TEXT = `${WAYBENCH_VERSION}, model ${MODEL_VERSION}`;
