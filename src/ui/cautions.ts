/** Of an axis that stands upright or leans. */
export const DROPS =
  'It drops when the drive trips or is switched off. Brake and counterbalance come before tuning.';

/** What a simulation cannot take off anyone. Common practice, no source: what every maker of machine axes warns of. */
export const CAUTIONS = {
  title: 'Before you touch real hardware',
  opening:
    'A simulation shows tendencies; commissioning belongs to qualified people. Gains from here are a starting point, not a setting.',
  dangers: [
    [
      'Strong magnets',
      'An open magnet track pulls steel with kilonewtons, powered or not. Keep tools, watches, pacemakers and fingers away.',
    ],
    [
      'Pinch',
      'A table without power is free to move, and a moving one pinches. A direct drive has no gearing that holds it.',
    ],
    ['Vertical axis', DROPS],
    ['Live bus', 'The DC bus stays charged after switching off. Wait, measure, then touch.'],
    [
      'Runaway loop',
      'A wrong sign, a wrong scale or too much gain drives the axis away at full force. First moves belong at reduced current and speed, with end stops, limits and emergency stop proven.',
    ],
  ],
  closing:
    'Local codes and standards apply, and where they ask for licensed or qualified practice, so does this page. Nothing here replaces a risk assessment.',
} as const;
