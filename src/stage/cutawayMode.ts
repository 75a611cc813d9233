/** What the machine shows: its outside, or what flows or warms inside it. */
export type Cutaway = 'closed' | 'phase current' | 'temperature';
