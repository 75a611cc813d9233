export type UnitSystem = 'metric' | 'inch';

let chosen: UnitSystem = 'metric';

/** The system of units in which a person reads: one setting for all text, as a language would be. */
export function unitSystem(): UnitSystem {
  return chosen;
}

/** Holds from the next text on; whoever changes it shows the others again. */
export function setUnitSystem(system: UnitSystem): void {
  chosen = system;
}

/** What `make` returns, its texts in the units of this system. */
export function inSystem<T>(system: UnitSystem, make: () => T): T {
  const before = chosen;
  chosen = system;
  try {
    return make();
  } finally {
    chosen = before;
  }
}
