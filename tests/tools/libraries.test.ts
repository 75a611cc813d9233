import { expect, it } from 'vitest';
import { libraries, licenceNotices, noticesOf, packagesOf } from './libraries.mjs';

const LISTED = libraries();

/** What the build says of a page that holds these modules; the notices where it says nothing. */
function built(page: readonly string[], workers: readonly string[] = []): string {
  const { ofPage, ofWorkers } = licenceNotices(LISTED);
  const told: string[] = [];
  const context = {
    error: (text: string) => told.push(text),
    emitFile: ({ source }: { readonly source: string }) => told.push(source),
  };
  ofWorkers.generateBundle({}, { worker: { moduleIds: workers } });
  ofPage.generateBundle.call(context, {}, { page: { moduleIds: page }, style: {} });
  return told[0] ?? '';
}

const moduleOf = (name: string) => `/somewhere/node_modules/${name}/dist/${name}.mjs`;
const [first = '', ...others] = LISTED.map(({ name }) => name);

it('knows the package of a module', () => {
  expect(
    packagesOf(['/a/src/main.ts', '/a/node_modules/@one/two/x.js', '/a/node_modules/b/node_modules/c/y.js']),
  ).toEqual(['@one/two', 'c']);
});

it('every library states its licence, one that lets the page be passed on', () => {
  for (const { name, licence, text } of LISTED) {
    expect(['MIT', 'BSD-2-Clause', 'BSD-3-Clause', 'ISC', 'Apache-2.0'], name).toContain(licence);
    expect(text.length, name).toBeGreaterThan(500);
  }
});

it('writes the notices where the page with its workers holds just these libraries', () => {
  expect(built(others.map(moduleOf), [moduleOf(first)])).toBe(noticesOf(LISTED));
});

it('refuses a page that holds another library, and notices of one that it does not hold', () => {
  expect(built([first, ...others, 'unlisted'].map(moduleOf))).toMatch(/^The page holds .*unlisted/);
  expect(built(others.map(moduleOf))).toMatch(new RegExp(`there are notices for .*${first}`));
});
