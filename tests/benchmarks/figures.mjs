import { changeText } from './history.mjs';

/** Prints the figures of a run as they come, each beside the one recorded last, and keeps them for the history. */
export class Figures {
  /** @type {Record<string, number>} */
  values = {};
  /** @type {Record<string, string>} */
  missing = {};
  #last;

  /** @param {Record<string, number>} last those recorded last */
  constructor(last) {
    this.#last = last;
  }

  heading(text) {
    console.log(`\n${text}`);
  }

  /**
   * @param {string} name by which it is remembered; what stands before a colon is common to several scenes
   * @param {number} value
   * @param {string} unit
   * @param {'more' | 'less'} better what of it is better
   */
  add(name, value, unit, better, remark = '') {
    const kept = Number(value.toPrecision(4));
    this.values[name] = kept;
    const change = changeText(kept, this.#last[name], better);
    this.#print(name, `${Number(value.toPrecision(3))} ${unit}`, [change, remark].filter(Boolean).join('; '));
  }

  /** What cannot be measured here, and why. */
  leaveOut(name, reason) {
    this.missing[name] = reason;
    this.#print(name, '—', reason);
  }

  /** What is printed only. */
  note(name, text, remark) {
    this.#print(name, text, remark);
  }

  #print(name, value, remark) {
    console.log(`  ${name.padEnd(46)} ${value.padStart(14)}   ${remark}`);
  }
}
