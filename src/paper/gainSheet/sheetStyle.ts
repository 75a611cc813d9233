import { paperStyle } from '../paperStyle.ts';

/** Of the gain sheet: how paper looks, and what only this sheet has. */
export const SHEET_STYLE = `${paperStyle('Simulated with Waybench. A starting point, not a setting.')}
.scaled :is(th, td) { padding-right: 0.45rem; }
.scaled .value { white-space: nowrap; }
.scaled .gain :is(th, td) { border-bottom: 0; }
.scaled .gain { break-after: avoid; }
.scaled .how { padding: 0 0 0.3rem 1.2rem; }
.signed td { height: 2.1rem; }
.signed th { width: 30%; }
`;
