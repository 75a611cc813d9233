/**
 * Makes a fresh clone ready, and costs a tenth of a second on a ready one: installs the packages when the lock file or
 * the machine has changed, and with --browser a Chromium for the tests. Plain Node, since nothing is installed yet.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { argv, env, execPath, exit, getuid, platform, versions } from 'node:process';
import { fileURLToPath } from 'node:url';
import { findBrowser } from './browser.mjs';

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const stampFile = join(root, 'node_modules', '.waybench-stamp');

const problem =
  nodeProblem() ?? installPackages() ?? (argv.includes('--browser') ? await installBrowser() : null);
if (problem) {
  console.error(`\n${problem}\n`);
  exit(1);
}

function nodeProblem() {
  const [major, minor] = versions.node.split('.').map(Number);
  const fits = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22;
  return fits
    ? null
    : `Waybench needs Node 20.19 or newer, or 22.12 or newer; this is Node ${versions.node}. Get one from nodejs.org.`;
}

function installPackages() {
  const lock = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
  const stamp = `${lock} ${platform} ${process.arch} node${versions.node.split('.')[0]}`;
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp) return null;

  console.log('Installing packages (only when they have changed)...');
  if (!npm('ci', '--include=dev', '--no-audit', '--no-fund'))
    return 'npm ci failed; its message stands above.';
  writeFileSync(stampFile, stamp);
  return null;
}

/** Debian has a package, which brings its libraries along; elsewhere Playwright knows where to download one. */
async function installBrowser() {
  if (await browserFound()) return null;
  const debian = platform === 'linux' && /^ID=debian$/m.test(readOr('/etc/os-release', ''));
  if (debian && getuid() === 0) {
    console.log('Installing Chromium for the tests from Debian...');
    const noQuestions = { ...env, DEBIAN_FRONTEND: 'noninteractive' };
    if (run('apt-get', ['update'], noQuestions))
      run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], noQuestions);
    if (await browserFound()) return null;
  }
  console.log('Downloading Chromium for the tests...');
  run(execPath, [join(root, 'node_modules', 'playwright-core', 'cli.js'), 'install', 'chromium']);
  if (await browserFound()) return null;
  return (
    'The tests need a Chromium (or Chrome, or Edge) and none could be found or installed here.\n' +
    'Install one, or set CHROME_PATH to the program of one. Running the product (npm start) does not need this.'
  );
}

async function browserFound() {
  try {
    return (await findBrowser()) !== null;
  } catch (error) {
    console.error(`\n${error.message}\n`);
    exit(1);
  }
}

/** The npm that called this, wherever it is; on Windows npm is a script and can only be started through a shell. */
function npm(...args) {
  const caller = env.npm_execpath;
  if (caller && basename(caller).startsWith('npm')) return run(execPath, [caller, ...args]);
  return run('npm', args, env, platform === 'win32');
}

function run(program, args, environment = env, shell = false) {
  return spawnSync(program, args, { cwd: root, env: environment, stdio: 'inherit', shell }).status === 0;
}

function readOr(file, otherwise) {
  return existsSync(file) ? readFileSync(file, 'utf8') : otherwise;
}
