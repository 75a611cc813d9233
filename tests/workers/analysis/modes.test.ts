import { expect, it } from 'vitest';
import { plantResponse } from '../../../workers/pretune/plantResponse.ts';
import { barePreset } from './barePreset.ts';
import { TWO_MODES } from './twoModes.ts';

it('shows two further resonances to pretuning, each a little above the frequency with the table held', () => {
  const p = barePreset('tubular', TWO_MODES);
  const { modes } = plantResponse(p, 50).sliding;
  const without = plantResponse({ ...p, mode1: 'off', mode2: 'off' }, 50).sliding.modes;
  expect(modes).toHaveLength(without.length + 2);
  for (const held of [60, 160]) {
    // On the mass M − m_f that is left; the other parts and the motor's drag move it a little.
    const found = modes.find(({ frequency }) => frequency > held && frequency < 1.1 * held);
    expect(found).toBeDefined();
  }
});
