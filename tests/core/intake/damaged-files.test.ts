import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonText } from '../../../src/files/json-text.ts';
import { importDrawing } from '../../../src/intake/import-drawing.ts';
import { nothingSaid } from '../../../src/intake/import-options.ts';
import { readDrawing } from '../../../src/intake/sources.ts';
import { bytesOf, circle, dxf, entity, line, polyline, svg } from './drawn.ts';

const sheet = readFileSync(join(import.meta.dirname, '../../fixtures/intake/features.csv'), 'utf8');
const sheetWithoutUnit = sheet.replaceAll(' [mm]', '');

const drawing = dxf({
  layers: [[2, 'off', 70, 0, 62, -7]],
  blocks: { it: [circle(0, 0, 3), line(0, 0, 1, 1)], outer: [entity('INSERT', 2, 'it', 50, 30)] },
  entities: [
    polyline([
      [0, 0],
      [10, 0, 0.5],
      [10, 10],
      [0, 10],
    ]),
    line(20, 0, 30, 0),
    entity('ARC', 10, 25, 20, 0, 40, 5, 50, 0, 51, 180),
    entity('ELLIPSE', 10, 5, 20, 5, 11, 3, 21, 4, 40, 0.5, 41, 0, 42, 6.28),
    entity(
      'SPLINE',
      71,
      2,
      ...[0, 0, 0, 1, 1, 1].flatMap((k) => [40, k]),
      ...[1, 2, 3].flatMap((x) => [10, x, 20, x * x]),
    ),
    entity('INSERT', 2, 'outer', 10, 50, 41, 2, 70, 2, 44, 20),
  ],
});

const picture = svg(
  `<g id="ribs" transform="rotate(30) scale(2 1)"><rect id="r" width="10" height="5" rx="2"/><path d="M0 0C1 2 3 4 5 0zM20 20a5 3 10 1 0 9 9"/></g>
   <use href="#r" x="50"/><circle r="4"/><polygon points="0,0 5,5 0,9"/>`,
  'width="100mm" viewBox="0 0 100 100"',
);

/** A text with a few letters changed, left out or put in, or a piece of it lost or doubled. */
const damaged = (text: string) =>
  fc
    .array(
      fc.record({
        at: fc.nat(text.length),
        length: fc.nat(30),
        instead: fc.oneof(
          fc.string({ maxLength: 3 }),
          fc.constantFrom('\n', '0', '-1', '1e9', '1e400', '"', '<', ';', text.slice(40, 90)),
        ),
      }),
      { minLength: 1, maxLength: 4 },
    )
    .map((cuts) =>
      cuts.reduce((all, { at, length, instead }) => all.slice(0, at) + instead + all.slice(at + length), text),
    );

describe('a damaged file is read as far as it means something, or refused with what is wrong; it never breaks the reader', () => {
  it.each([
    ['a.csv', sheet],
    ['b.csv', sheetWithoutUnit],
    ['a.dxf', drawing],
    ['a.svg', picture],
  ])('%s', (name, text) => {
    const tried = (content: string) => {
      const read = readDrawing(name, bytesOf(content));
      if (!read.ok) return read;
      const units = read.value.unit === null ? 'mm' : null;
      return importDrawing(name, read.value, { ...nothingSaid, name, viewedFrom: 'face', units });
    };
    expect(tried(text)).toMatchObject({ ok: true });
    fc.assert(
      fc.property(damaged(text), (content) => {
        const result = tried(content);
        if (result.ok) expect(() => JSON.parse(jsonText(result.value.part))).not.toThrow();
        else
          for (const finding of result.findings)
            expect(finding).toMatchObject({ file: name, found: expect.stringMatching(/./) });
      }),
      { numRuns: 250 },
    );
  });
});
