import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json',
};

/** A plain static web server on a free port that serves a folder under `/axis/`, as a host with many pages does, until it is closed. */
export async function plainHost(folder: string) {
  const server = createServer(async ({ url = '' }, response) => {
    const { pathname } = new URL(url, 'http://host');
    const path = normalize(pathname.replace(/^\/axis\//, '').replace(/^$/, 'index.html'));
    try {
      const content = await readFile(join(folder, path));
      response.writeHead(200, { 'content-type': TYPES[extname(path)] ?? 'text/plain' }).end(content);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/axis/`,
    close: () =>
      new Promise<void>((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
