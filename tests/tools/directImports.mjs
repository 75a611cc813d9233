import { join } from 'node:path';
import { ROOT } from './sources.mjs';

/** A list of names imported from a module, as it stands in code without types. */
const IMPORT = /^import \{([^}]*)\} from ("[^"]+"|'[^']+');?/gm;

/** The rooms whose code computes for long. */
const ROOMS = ['shared', 'workers'].map((room) => join(ROOT, room, '/'));

/**
 * A plugin for tests: what a module imports becomes constants of its own. The test runner makes a look-up in the other module of every use of
 * an import, the index of a state in a law included, and a simulation then takes five times as long as in the built page. Constants may be
 * taken at once because no module of these rooms is part of a circle of imports, as `npm run imports` makes sure.
 */
export function directImports() {
  return {
    name: 'direct-imports',
    enforce: /** @type {const} */ ('post'),
    /**
     * @param {string} code
     * @param {string} id
     */
    transform(code, id) {
      if (!ROOMS.some((room) => id.startsWith(room))) return null;
      let count = 0;
      return code.replace(IMPORT, (_, names, from) => {
        const module = `__module${count++}__`;
        return `import * as ${module} from ${from}; const {${names.replaceAll(' as ', ': ')}} = ${module};`;
      });
    },
  };
}
