import type { JobFile } from '../../files/job-file.ts';
import { el, written } from './html.ts';

/** The viewer's page with the job in it, as a report holds it. */
export interface HeldViewer {
  /** The page in UTF-8, gzipped, in base64. */
  readonly page: string;
  /** What may run in it and in the report, as sources of a content security policy. */
  readonly scripts: readonly string[];
}

/**
 * Shows the button that opens the viewer over the report; a report read without scripts has none. A frame keeps the
 * report's own origin, so that the viewer may store the job as a page from disk may. Free of what HTML or XML would take
 * for markup.
 */
export const openingScript = `
const [held, room, opens, back] = ['viewer', 'mover', 'move-it', 'back'].map((id) => document.getElementById(id));
const frame = room.querySelector('iframe');
opens.parentElement.hidden = false;
opens.addEventListener('click', async () => {
  room.showModal();
  frame.focus();
  if (frame.srcdoc !== '') return;
  const bytes = Uint8Array.from(atob(held.textContent), (c) => c.charCodeAt(0));
  const page = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  frame.srcdoc = await new Response(page).text();
});
back.addEventListener('click', () => room.close());
`;

/** The viewer's page, as it was built, to be held by a report of the job. */
export async function heldViewer(page: string, job: JobFile): Promise<HeldViewer> {
  const scripts = await Promise.all([openingScript, ...textsIn('script', page)].map(hashSource));
  return { page: await gzipped(withJob(page, job)), scripts: [...new Set(scripts)] };
}

/** The page with a job to open in it, before its scripts; one that is data never runs, and `<` would end it. */
function withJob(page: string, job: JobFile): string {
  const text = JSON.stringify(job).replaceAll('<', '\\u003c');
  const held = written(el('script', { id: 'job', type: 'application/json' }, text));
  return page.replace('<title>', (title) => held + title);
}

/** What stands in each element of such a kind, as a browser hashes it: with LF for CR LF. */
export const textsIn = (tag: 'script' | 'style', html: string): string[] =>
  [...html.replaceAll(/\r\n?/g, '\n').matchAll(new RegExp(`<${tag}\\b[^>]*>(.*?)</${tag}>`, 'gis'))].map(
    ([, text = '']) => text,
  );

const hashSource = async (text: string): Promise<string> =>
  `'sha256-${base64(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text)))}'`;

const gzipped = async (text: string): Promise<string> =>
  base64(await new Response(new Blob([text]).stream().pipeThrough(new CompressionStream('gzip'))).arrayBuffer());

const base64 = (bytes: ArrayBuffer): string =>
  btoa(Array.from(new Uint8Array(bytes), (byte) => String.fromCharCode(byte)).join(''));
