import { createHash } from 'node:crypto';
import { textsIn } from '../../src/drawing/report/held-viewer.ts';
import type { Reply } from './reply.ts';

/** The viewer's page, allowed to run its own scripts and styles and nothing else. */
export function pageReply(html: string): Reply {
  return {
    status: 200,
    headers: { 'Content-Type': 'text/html; charset=utf-8', 'Content-Security-Policy': policyFor(html) },
    body: html,
  };
}

/**
 * Scripts and styles by the hash of their text: what the page sets through the DOM's own properties needs no leave,
 * so neither inline attributes nor eval are let in. The worker is made from a blob by the page itself.
 */
function policyFor(html: string): string {
  return [
    "default-src 'none'",
    `script-src ${hashesOf('script', html)}`,
    `style-src ${hashesOf('style', html)}`,
    'worker-src blob:',
    "img-src 'self' blob: data:",
    "connect-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
}

function hashesOf(tag: 'script' | 'style', html: string): string {
  const hashes = textsIn(tag, html).map((text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`);
  return hashes.length === 0 ? "'none'" : [...new Set(hashes)].join(' ');
}
