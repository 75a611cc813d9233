import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { env, execPath } from 'node:process';
import { ROOT } from '../../tools/sources.mjs';

/** `npm run axis -- ...`, called from `folder`, as a process of its own. */
export function launched(folder: string, ...args: string[]) {
  const { status, stdout, stderr } = spawnSync(
    execPath,
    [join(ROOT, 'tests', 'tools', 'axis.mjs'), ...args],
    { cwd: ROOT, env: { ...env, INIT_CWD: folder }, encoding: 'utf8' },
  );
  return { status, stdout, stderr };
}
