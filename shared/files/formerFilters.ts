/**
 * Up to the filters of today, the loop had two notches and a low-pass under names of their own. Their names are no parameters any more,
 * so a set of values that has them can be read by name, whichever document it stands in.
 */
const FORMER: Readonly<Record<string, { readonly name: string; readonly type?: string }>> = {
  notch1: { name: 'filter1', type: 'notch' },
  notch1Frequency: { name: 'filter1Frequency' },
  notch1Width: { name: 'filter1Damping' },
  notch1Depth: { name: 'filter1Depth' },
  notch2: { name: 'filter2', type: 'notch' },
  notch2Frequency: { name: 'filter2Frequency' },
  notch2Width: { name: 'filter2Damping' },
  notch2Depth: { name: 'filter2Depth' },
  lowpass: { name: 'filter3', type: 'low-pass' },
  lowpassFrequency: { name: 'filter3Frequency' },
  lowpassDamping: { name: 'filter3Damping' },
};

const ON: readonly unknown[] = [true, 'true', 'on'];
const OFF: readonly unknown[] = [false, 'false', 'off'];

/** The same values under the names of today; a former name beside today's is left as it is, for the check to refuse. */
export function withFiltersOfToday(values: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => {
      const former = Object.hasOwn(FORMER, name) ? FORMER[name] : undefined;
      if (!former || Object.hasOwn(values, former.name)) return [name, value];
      if (former.type === undefined) return [former.name, value];
      if (ON.includes(value)) return [former.name, former.type];
      return OFF.includes(value) ? [former.name, 'off'] : [name, value];
    }),
  );
}
