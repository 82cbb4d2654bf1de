import { createReadStream, existsSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { extname, join, normalize } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json',
};

export interface FolderServer {
  readonly url: string;
  /** what was asked for since the last time */
  asked(): string[];
  /** another folder takes the place of the one served */
  serve(folder: string): void;
  /** no request is answered any more, as without a network */
  stop(): Promise<void>;
}

/** The plainest server of files, so that a test can exchange the build under the page or take the network away. */
export async function serveFolder(first: string): Promise<FolderServer> {
  let folder = first;
  const asked: string[] = [];
  const server: Server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://server').pathname));
    asked.push(path);
    const file = join(folder, path === '/' ? 'index.html' : path);
    if (!existsSync(file)) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' });
    createReadStream(file).pipe(response);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('the server has no port');
  return {
    url: `http://127.0.0.1:${address.port}/`,
    asked: () => asked.splice(0),
    serve(next) {
      folder = next;
    },
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
