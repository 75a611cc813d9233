/** Of the product, as in package.json: what the figures of a sheet come from. */
export const WAYBENCH_VERSION = '0.1.0';
