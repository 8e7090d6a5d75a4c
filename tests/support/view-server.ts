import * as fs from 'node:fs';
import { type IncomingHttpHeaders, request } from 'node:http';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { ViewerContent } from '../../cli/view/answer.ts';
import { serve } from '../../cli/view/serve.ts';
import { jobFiles } from './small-job.ts';
import { folderWith } from './temp-folder.ts';

export interface ServerAnswer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

export interface Asking {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string | string[]>>;
  readonly body?: string | Uint8Array;
}

/** A page with a script and a style, as small as it can be. */
export const smallPage =
  '<!doctype html><title>Small</title><style>p{color:red}</style><script type="module">\r\nlet a = 1;</script>';

/** Serves a job from a folder of its own until the test is done. */
export async function viewing(shown: Partial<ViewerContent> & { readonly folder?: string } = {}, timing = {}) {
  const folder = shown.folder ?? folderWith(jobFiles());
  const jobFile = shown.jobFile === undefined ? join(folder, 'job.fit.json') : shown.jobFile;
  const all = { html: smallPage, disk: fs, mostBytes: 1024 * 1024, ...shown, jobFile };
  const serving = await serve(all, 0, timing);
  onTestFinished(() => serving.close());
  const { port, pathname } = new URL(serving.address);
  const ask = (path: string, asking: Asking = {}) => askServer(Number(port), path, asking);
  return {
    folder,
    port: Number(port),
    base: pathname,
    address: serving.address,
    /** Asks for a path exactly as given, token and all. */
    ask,
    /** Asks for what stands behind the token. */
    get: (rest: string, asking: Asking = {}) => ask(pathname + rest, asking),
    put: (name: string, body: string | Uint8Array, version: string, headers = {}) =>
      ask(`${pathname}file/${encodeURIComponent(name)}`, {
        method: 'PUT',
        headers: { 'If-Match': `"${version}"`, ...headers },
        body,
      }),
  };
}

function askServer(port: number, path: string, { method = 'GET', headers = {}, body }: Asking): Promise<ServerAnswer> {
  return new Promise((done, fail) => {
    const asked = request({ host: '127.0.0.1', port, path, method, headers, agent: false }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () =>
        done({ status: response.statusCode ?? 0, headers: response.headers, text: Buffer.concat(chunks).toString() }),
      );
    });
    asked.on('error', fail);
    asked.end(body);
  });
}
