/** Of an axis that stands upright or leans. */
export const DROPS =
  'It drops when the drive trips or is switched off. Fit and test brake and counterbalance before tuning.';

/** What a simulation cannot take off anyone. Common practice, no source: what every maker of machine axes warns of. */
export const CAUTIONS = {
  title: 'Before you touch real hardware',
  opening:
    'A simulation shows tendencies; commissioning is for qualified people. These gains are a starting point, not a setting.',
  dangers: [
    [
      'Strong magnets',
      'An open magnet track attracts steel with kilonewtons, powered or not. Keep tools, watches, pacemakers and fingers away.',
    ],
    [
      'Pinch',
      'An unpowered table is free to move, and a moving table can crush. A direct drive has no gearing to hold it.',
    ],
    ['Vertical axis', DROPS],
    ['Live bus', 'The DC bus stays charged after switching off. Wait, measure, then touch.'],
    [
      'Runaway loop',
      'A wrong sign, a wrong scale or too much gain makes the axis run away at full force. Make the first moves at reduced current and speed, with end stops, limits and emergency stop proven.',
    ],
  ],
  closing:
    'Local codes and standards apply, and where they require licensed or qualified people, so does this page. Nothing here replaces a risk assessment.',
} as const;
