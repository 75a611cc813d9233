/** What the machine shows: its outside, or what flows or warms inside it; with the field, its currents too. */
export type Cutaway = 'closed' | 'phase current' | 'temperature' | 'field';
