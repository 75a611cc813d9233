import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './sources.mjs';

/**
 * A library that the page ships with, and its licence as its package has it.
 * @typedef {{ name: string, version: string, licence: string, text: string }} Library
 */

const read = (...path) => readFileSync(join(ROOT, ...path), 'utf8');

/** @returns {Library[]} the libraries that the page may ship with, in alphabetical order */
export function libraries() {
  const { dependencies } = JSON.parse(read('package.json'));
  return Object.keys(dependencies)
    .sort()
    .map((name) => {
      const { version, license } = JSON.parse(read('node_modules', name, 'package.json'));
      const file = readdirSync(join(ROOT, 'node_modules', name)).find((each) => /^licen[cs]e/i.test(each));
      if (!file) throw new Error(`The package ${name} holds no text of its licence.`);
      return { name, version, licence: license, text: read('node_modules', name, file).trim() };
    });
}

/**
 * Names of the packages that modules belong to.
 * @param {Iterable<string>} modules
 * @returns {string[]}
 */
export function packagesOf(modules) {
  const names = [...modules].map((id) => /.*\/node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(id)?.[1]);
  return [...new Set(names.filter((name) => name !== undefined))].sort();
}

/** @param {Library[]} listed */
export function noticesOf(listed) {
  const opening = 'Waybench ships with these libraries, each under its own licence.';
  const notices = listed.map(
    ({ name, version, licence, text }) => `${name} ${version} (${licence})\n\n${text}`,
  );
  return `${[opening, ...notices].join(`\n\n${'-'.repeat(80)}\n\n`)}\n`;
}

/**
 * Writes the notices into the built page, and refuses a page that holds a library of which it has none, or names one that it
 * does not hold.
 * @param {Library[]} listed
 */
export function licenceNotices(listed) {
  /** @type {Set<string>} */
  const modules = new Set();
  const collect = (bundle) => {
    for (const output of Object.values(bundle)) for (const id of output.moduleIds ?? []) modules.add(id);
  };
  return {
    /** For the bundles of workers, which are made before that of the page. */
    ofWorkers: {
      name: 'licence-notices-of-workers',
      apply: 'build',
      generateBundle: (_options, bundle) => collect(bundle),
    },
    ofPage: {
      name: 'licence-notices',
      apply: 'build',
      generateBundle(_options, bundle) {
        collect(bundle);
        const held = packagesOf(modules).join(', ');
        const names = listed.map(({ name }) => name).join(', ');
        if (held !== names) this.error(`The page holds ${held}; there are notices for ${names}.`);
        this.emitFile({ type: 'asset', fileName: 'licences.txt', source: noticesOf(listed) });
      },
    },
  };
}
