import type { Form } from './scene.ts';

/** What the drives of a form are called together. */
export const FORM_NAMES: Readonly<Record<Form, string>> = {
  tubular: 'Tubular motors',
  'u-channel': 'U-channel motors',
  flat: 'Flat motors',
  screw: 'Screw drives',
};
