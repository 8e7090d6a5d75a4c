import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { viewerFile } from './support/viewer-page.ts';

/**
 * The page is one file that is sent by mail and opened from a stick or a slow disk in a workshop: no larger than one
 * photograph. What it holds now is counted in DEVELOPERS.md; the rest is room for one more step, not for a framework.
 */
const mostBytes = 1_920_000;
const mostGzippedBytes = 680_000;

describe('the page as one file', () => {
  let page: Buffer;
  beforeAll(() => {
    page = readFileSync(viewerFile());
  });

  it('is under its ceiling, as it lies and as it is sent', () => {
    expect(page.byteLength).toBeLessThan(mostBytes);
    expect(gzipSync(page, { level: 9 }).byteLength).toBeLessThan(mostGzippedBytes);
  });

  it.each([
    '@svgdotjs/svg.js',
    'preact',
    'pdf-lib',
    'pako',
    'fflate',
    'zod',
    'clipper2-ts',
    '@flatten-js/core',
    'robust-predicates',
  ])('carries the notice of %s, with its version and licence', (library) => {
    const html = page.toString('utf8');
    const notices = html.slice(html.lastIndexOf('This page holds these libraries:'));
    const { version } = JSON.parse(readFileSync(`node_modules/${library}/package.json`, 'utf8'));
    expect(notices).toMatch(
      new RegExp(`^${library.replaceAll('.', '\\.')} ${version.replaceAll('.', '\\.')}, \\S`, 'm'),
    );
  });
});
