import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { packet, unpack } from './packets.ts';

/** Where Debian and others install it; undefined where there is none. */
export const FIREFOX = ['/usr/bin/firefox-esr', '/usr/bin/firefox'].find((path) => existsSync(path));

/** A profile of its own, on a free port, with motion reduced so that the page opens paused. */
const PREFERENCES = {
  'marionette.port': 0,
  'ui.prefersReducedMotion': 1,
  'intl.accept_languages': 'en-GB',
  'datareporting.policy.dataSubmissionEnabled': false,
  'app.update.enabled': false,
};

type Answer = [error: { message: string } | null, result: unknown];

export interface Firefox {
  goto(url: string): Promise<void>;
  /** Result of the body of a function in the page. */
  evaluate(body: string): Promise<unknown>;
  close(): Promise<void>;
}

/** Starts a Firefox without a window. */
export async function startFirefox(path: string): Promise<Firefox> {
  const profile = await mkdtemp(join(tmpdir(), 'waybench-firefox-'));
  const lines = Object.entries(PREFERENCES).map(
    ([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});`,
  );
  await writeFile(join(profile, 'user.js'), lines.join('\n'));
  const browser = spawn(path, ['--headless', '--marionette', '--no-remote', '--profile', profile], {
    stdio: 'ignore',
  });
  const ended = once(browser, 'exit');
  const socket = connect(await portOf(), '127.0.0.1');
  const waiting = new Map<number, (answer: Answer) => void>();
  let arrived: Buffer = Buffer.alloc(0);
  let number = 0;
  socket.on('data', (chunk) => {
    const { messages, rest } = unpack(Buffer.concat([arrived, chunk]));
    arrived = rest;
    // The first one is a greeting and answers nothing.
    for (const message of messages)
      if (Array.isArray(message)) waiting.get(message[1])?.([message[2], message[3]]);
  });
  socket.on('close', () => {
    for (const answer of waiting.values()) answer([{ message: 'Firefox has ended.' }, null]);
  });
  await once(socket, 'connect');

  /** Firefox writes the port it has taken into its profile. */
  async function portOf(): Promise<number> {
    for (;;) {
      const port = Number(await readFile(join(profile, 'MarionetteActivePort'), 'utf8').catch(() => ''));
      if (port > 0) return port;
      if (browser.exitCode !== null) throw new Error(`${path} ended with code ${browser.exitCode}.`);
      await setTimeout(200);
    }
  }

  async function send(command: string, parameters: object): Promise<unknown> {
    number += 1;
    const answered = new Promise<Answer>((resolve) => waiting.set(number, resolve));
    socket.write(packet([0, number, command, parameters]));
    const [error, result] = await answered;
    if (error) throw new Error(`${command}: ${error.message}`);
    return result;
  }

  await send('WebDriver:NewSession', {});
  return {
    goto: async (url) => void (await send('WebDriver:Navigate', { url })),
    evaluate: async (body) => {
      const answer = await send('WebDriver:ExecuteScript', { script: body, args: [] });
      return (answer as { value: unknown }).value;
    },
    async close() {
      socket.destroy();
      browser.kill();
      await ended;
      await rm(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}
