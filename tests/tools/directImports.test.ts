import { describe, expect, test } from 'vitest';
import { directImports } from './directImports.mjs';
import { ROOT } from './sources.mjs';

const { transform } = directImports();
const MODULE = `${ROOT}/workers/model/law.ts`;

/** As the runner would go on from it: what follows the imports, run with a module in their place. */
function resultOf(code: string, imported: object): unknown {
  const body = transform(code, MODULE)?.replaceAll(
    /import \* as (\w+) from "\.\/at\.ts";/g,
    'const $1 = given;',
  );
  return new Function('given', `${body ?? ''}; return result;`)(imported);
}

describe('imports of a room that computes, in tests', () => {
  test('become constants that hold what was imported, also under another name', () => {
    const code = `import { valueAt, X1 as first } from "./at.ts";\nconst result = valueAt([5, 7], first);`;
    expect(resultOf(code, { valueAt: (list: number[], k: number) => list[k], X1: 1 })).toBe(7);
  });

  test('keep the lines where they are, so that an error is reported at its own', () => {
    const code = `import { a } from "./at.ts";\nimport { b } from "./at.ts";\nconst result = a + b;`;
    expect(transform(code, MODULE)?.split('\n')).toHaveLength(3);
    expect(resultOf(code, { a: 1, b: 2 })).toBe(3);
  });

  test('are left as they are in the page, in tests and in libraries', () => {
    const code = `import { a } from "./at.ts";`;
    for (const id of ['src/app/start.ts', 'tests/workers/law.test.ts', 'node_modules/odex/odex.js'])
      expect(transform(code, `${ROOT}/${id}`)).toBeNull();
  });
});
