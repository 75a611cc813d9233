import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { State } from './state.ts';

/** One physical idea that pushes, stores or heats. The plant knows no more of it than this. SI throughout. */
export interface Term {
  /** Works out, once, everything that `evaluate` needs of the parameters. */
  configure(p: Parameters): void;

  /** False while parameters, or the hand, leave the term nothing to do: the list then passes over it, since a call takes time. */
  readonly acts?: boolean;

  /**
   * What the term does in the state y. Adds to dy its forces (F1, F2) and the powers that it takes, turns into heat or gives away
   * (E_IN to E_OUT), and writes the derivatives of the states that are its own.
   */
  evaluate(y: Readonly<State>, dy: State): void;

  /** Adds the energy that the term stores in the state y. */
  store?(y: Readonly<State>, store: Store): void;
}

export interface Store {
  /** J */
  energy: number;
}
