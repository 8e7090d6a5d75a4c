import { createHash, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { refusals } from './refusals.ts';
import { nothingHere, type Reply } from './reply.ts';

/** The secret in the viewer's address, and the port it listens on. */
export interface Door {
  readonly token: string;
  readonly port: number;
}

const longestAddress = 4096;

/** The rest of the address of a request that comes from the viewer's own page, or why it is not let in. */
export function admitted(request: IncomingMessage, { token, port }: Door): string | Reply {
  const { url = '', headersDistinct } = request;
  const [host = '', ...more] = headersDistinct.host ?? [];
  // a name that some other site has made to lead here is not ours
  if (more.length > 0 || ![`127.0.0.1:${port}`, `localhost:${port}`].includes(host)) return refusals.wrongHost;
  if (!fromOwnPage(headersDistinct, host)) return refusals.foreign;
  if (url.length > longestAddress) return refusals.longAddress;
  const [, given = '', rest] = /^\/([^/]*)\/(.*)$/s.exec(url) ?? [];
  return rest !== undefined && same(given, token) ? rest : nothingHere;
}

/** What a browser tells of the page that asks; `none` is an address typed in or opened from elsewhere than a page. */
function fromOwnPage(headers: IncomingMessage['headersDistinct'], host: string): boolean {
  const origins = headers.origin ?? [];
  const sites = headers['sec-fetch-site'] ?? [];
  return (
    origins.every((origin) => origin === `http://${host}`) &&
    sites.every((site) => site === 'same-origin' || site === 'none')
  );
}

/** Compared by digests, so that the time it takes tells nothing of how much was right. */
const same = (given: string, token: string): boolean => timingSafeEqual(digest(given), digest(token));

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
