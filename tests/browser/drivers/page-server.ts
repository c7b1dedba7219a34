import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';

/** Pages of this machine, as if they were of a sale's site. */
export interface PageServer {
  /** Addresses on a host that the test build may read unasked. */
  readonly allowed: (path: string) => string;
  /** Addresses on hosts that nobody has allowed: the reader gets there by the user's click only. */
  readonly strange: (path: string, site?: 2 | 3 | 4 | 5) => string;
  readonly close: () => Promise<void>;
}

/** Serves what `pageAt` gives for a path (without its slash); what it gives null for is not found. */
export async function servePages(pageAt: (path: string) => string | null): Promise<PageServer> {
  const server: Server = createServer((request, response) => {
    const page = pageAt(decodeURIComponent((request.url ?? '/').slice(1).split('?')[0] ?? ''));
    response.writeHead(page === null ? 404 : 200, { 'content-type': 'text/html; charset=utf-8' });
    response.end(page ?? 'No such page');
  });
  await new Promise<void>((resolve) => server.listen(0, '0.0.0.0', resolve));
  // A server that listens on a port has an address of that kind.
  const { port } = server.address() as AddressInfo;
  return {
    allowed: (path) => `http://127.0.0.1:${port}/${path}`,
    // The whole block 127.0.0.0/8 is this machine, and the test build's permission is for one address of it.
    strange: (path, site = 2) => `http://127.0.0.${site}:${port}/${path}`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
