import { modesAt, type State, type Temperatures } from './state.ts';
import type { Store } from './term.ts';
import { Base } from './terms/base.ts';
import { Chips } from './terms/chips.ts';
import { Cogging } from './terms/cogging.ts';
import { Counterbalance } from './terms/counterbalance.ts';
import { EndStops } from './terms/endStops.ts';
import { Guide } from './terms/guide.ts';
import { Hand } from './terms/hand.ts';
import { Inertia } from './terms/inertia.ts';
import { IronDrag } from './terms/ironDrag.ts';
import { Link } from './terms/link.ts';
import { Modes } from './terms/modes.ts';
import { NutDrag } from './terms/nutDrag.ts';
import { Process } from './terms/process.ts';
import { Weight } from './terms/weight.ts';
import { Windings } from './terms/windings.ts';

export type Terms = ReturnType<typeof newTerms>;

/*
 * The list of the plant's terms. A new term has one line in each of these functions, in `storeAll` only if it stores energy: the energy audit
 * shows a store that was forgotten. The second and third are lists of calls, not loops: the engine compiles a call into its caller where it
 * meets one class only, and a loop over all of them takes half as long again.
 *
 * The order of a list is that of a sum, so a new term goes to the end (before `inertia`), and earlier runs repeat to the last digit.
 */

export function newTerms(motors: number, baseMoves: boolean, modeCount: number) {
  const base = new Base(baseMoves ? motors : null);
  const modes = new Modes(modeCount, modesAt(motors, baseMoves), base);
  return {
    windings: new Windings(motors),
    cogging: new Cogging(),
    ironDrag: new IronDrag(),
    nutDrag: new NutDrag(),
    link: new Link(),
    guide: new Guide(),
    counterbalance: new Counterbalance(),
    process: new Process(),
    endStops: new EndStops(),
    hand: new Hand(base),
    weight: new Weight(base),
    base,
    modes,
    chips: new Chips(),
    inertia: new Inertia(base, modes),
  };
}

/** A period of the controller begins in the state y: what takes long to work out is worked out about it. */
export function beginAll(terms: Terms, y: Readonly<State>): void {
  terms.windings.begin(y);
  if (terms.cogging.acts) terms.cogging.begin(y);
}

/** What every term does in the state y; the inertia last, since it takes what the others have added up. */
export function evaluateAll(terms: Terms, y: Readonly<State>, dy: State): void {
  terms.windings.evaluate(y, dy);
  if (terms.cogging.acts) terms.cogging.evaluate(y, dy);
  if (terms.ironDrag.acts) terms.ironDrag.evaluate(y, dy);
  if (terms.nutDrag.acts) terms.nutDrag.evaluate(y, dy);
  terms.link.evaluate(y, dy);
  terms.guide.evaluate(y, dy);
  if (terms.counterbalance.acts) terms.counterbalance.evaluate(y, dy);
  if (terms.process.acts) terms.process.evaluate(y, dy);
  terms.endStops.evaluate(y, dy);
  if (terms.hand.acts) terms.hand.evaluate(y, dy);
  if (terms.weight.acts) terms.weight.evaluate(y, dy);
  if (terms.base.moves) terms.base.evaluate(y, dy);
  if (terms.modes.acts) terms.modes.evaluate(y, dy);
  if (terms.chips.acts) terms.chips.evaluate(y, dy);
  terms.inertia.evaluate(y, dy);
}

/**
 * Hands temperatures to the terms that they change.
 * @returns true when that changed the energy stored
 */
export function warmAll(terms: Terms, t: Temperatures): boolean {
  terms.windings.warm(t);
  return terms.link.warm(t);
}

/** The energy that all terms store in the state y. */
export function storeAll(terms: Terms, y: Readonly<State>, store: Store): void {
  terms.windings.store(y, store);
  terms.inertia.store(y, store);
  terms.link.store(y, store);
  if (terms.cogging.acts) terms.cogging.store(y, store);
  terms.endStops.store(y, store);
  if (terms.weight.acts) terms.weight.store(y, store);
  if (terms.counterbalance.acts) terms.counterbalance.store(y, store);
  if (terms.base.moves) terms.base.store(y, store);
  if (terms.modes.acts) terms.modes.store(y, store);
}

/** Which contacts are closed, as a number that changes where a force of the plant jumps or has a kink. */
export function contactsOf(terms: Terms, y: Readonly<State>): number {
  return 5 * terms.link.contact(y) + terms.endStops.contact(y);
}
