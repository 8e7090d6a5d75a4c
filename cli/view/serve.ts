import { randomBytes } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { answerTo, type ViewerContent } from './answer.ts';
import { admitted, type Door } from './gate.ts';
import { refusals } from './refusals.ts';
import type { Reply } from './reply.ts';

/** How much of a request there may be before its body, and how long it may take to arrive, ms. */
const limits = {
  maxHeaderSize: 16 * 1024,
  headersTimeout: 10_000,
  requestTimeout: 60_000,
  connectionsCheckingInterval: 1000,
};
const mostConnections = 64;

/** A running viewer: the address with its secret, and the way to end it. */
export interface Serving {
  readonly address: string;
  close(): Promise<void>;
}

/** Serves a viewer to this machine alone; port 0 takes a free one. Rejects with what the system says. */
export async function serve(shown: ViewerContent, port: number, timing: Partial<typeof limits> = {}): Promise<Serving> {
  const server = createServer({ ...limits, ...timing });
  server.maxConnections = mostConnections;
  await listening(server, port);
  const door = { token: randomBytes(32).toString('base64url'), port: (server.address() as AddressInfo).port };
  server.on('request', async (request, response) => send(response, await replyTo(request, door, shown)));
  return { address: `http://127.0.0.1:${door.port}/${door.token}/`, close: () => closed(server) };
}

const listening = (server: Server, port: number): Promise<void> =>
  new Promise((done, fail) => {
    // stays: what fails once it listens, such as one connection too many, is no reason to end
    server.on('error', fail);
    server.listen(port, '127.0.0.1', done);
  });

const closed = (server: Server): Promise<void> =>
  new Promise((done) => {
    server.close(() => done());
    server.closeAllConnections();
  });

async function replyTo(request: IncomingMessage, door: Door, shown: ViewerContent): Promise<Reply> {
  try {
    const asked = admitted(request, door);
    return typeof asked === 'string' ? await answerTo(asked, request, shown) : asked;
  } catch {
    return refusals.fault;
  }
}

const strict = {
  'Content-Security-Policy': "default-src 'none'; frame-ancestors 'none'",
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cache-Control': 'no-store',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

function send(response: ServerResponse, { status, headers, body }: Reply): void {
  // what was refused may have more to come, which nobody is going to read
  const ending = status >= 400 ? { Connection: 'close' } : {};
  response.writeHead(status, { ...strict, ...headers, ...ending, 'Content-Length': Buffer.byteLength(body) });
  response.end(body);
}
