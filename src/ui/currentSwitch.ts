import { CURRENT_UNITS, currentUnit, setCurrentUnit } from '../../shared/core/currentUnit.ts';
import { prefer, preferred } from './preferences.ts';

/** Currents as peak values or RMS, throughout the page: as the person chose last. */
export class CurrentSwitch {
  readonly #onChange: () => void;

  constructor(onChange: () => void) {
    this.#onChange = onChange;
    const kept = CURRENT_UNITS.find((unit) => unit === preferred('currents'));
    if (kept) setCurrentUnit(kept);
  }

  get isRms(): boolean {
    return currentUnit() === 'A RMS';
  }

  toggle(): void {
    setCurrentUnit(this.isRms ? 'A peak' : 'A RMS');
    prefer('currents', currentUnit());
    this.#onChange();
  }
}
