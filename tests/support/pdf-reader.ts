import { decodePDFRawStream, PDFArray, PDFDict, PDFDocument, PDFName, type PDFPage, PDFRawStream } from 'pdf-lib';

export type Point = readonly [x: number, y: number];

/** What a content stream strokes, in its own user space. */
export interface PageContent {
  readonly lines: readonly (readonly [Point, Point])[];
  readonly curves: readonly (readonly [Point, Point, Point, Point])[];
  /** The strings it shows, decoded as code page 1252 near enough for ASCII. */
  readonly texts: readonly string[];
  /** Where the base line of each string begins. */
  readonly textsAt: readonly Point[];
  /** What places each form it draws: a b c d e f. */
  readonly forms: readonly (readonly number[])[];
}

export interface ReadPage {
  readonly mediaBox: readonly number[];
  readonly page: PageContent;
  /** The drawing all pages of it share, in its own mm. */
  readonly drawing: PageContent;
}

/** The pages of a PDF as their operators have them: points of 1/72 in on the page, mm in the drawing. */
export async function readPages(bytes: Uint8Array): Promise<ReadPage[]> {
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  return document.getPages().map((page) => ({
    mediaBox: page.node
      .MediaBox()
      .asArray()
      .map((value) => Number(value.toString())),
    page: stroked(contentOf(page)),
    drawing: stroked(formOf(page)),
  }));
}

function contentOf(page: PDFPage): string {
  const content = page.node.Contents();
  if (content instanceof PDFArray || !(content instanceof PDFRawStream)) throw new Error('not one stream');
  return latin(content);
}

function formOf(page: PDFPage): string {
  const objects = page.node.Resources()?.lookup(PDFName.of('XObject'), PDFDict);
  const form = objects?.lookup(PDFName.of('Drawing'));
  if (!(form instanceof PDFRawStream)) throw new Error('no drawing');
  return latin(form);
}

const latin = (stream: PDFRawStream): string =>
  Array.from(decodePDFRawStream(stream).decode(), (byte) => String.fromCharCode(byte)).join('');

type Matrix = readonly [number, number, number, number, number, number];

const on = ([a, b, c, d, e, f]: Matrix, [x, y]: Point): Point => [a * x + c * y + e, b * x + d * y + f];

const times = (m: Matrix, n: Matrix): Matrix => {
  const [a, b, c, d, e, f] = n;
  const [p, q, r, s] = m;
  const at = on(m, [e, f]);
  return [p * a + r * b, q * a + s * b, p * c + r * d, q * c + s * d, ...at];
};

/** Runs the few operators our writer uses: q Q cm m l c re h S B f f* B* Do Tm Tj and those that only paint. */
function stroked(content: string): PageContent {
  const lines: [Point, Point][] = [];
  const curves: [Point, Point, Point, Point][] = [];
  const texts: string[] = [];
  const textsAt: Point[] = [];
  let textAt: Point = [0, 0];
  const forms: number[][] = [];
  const saved: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let path: [Point, Point][] = [];
  let pending: [Point, Point, Point, Point][] = [];
  let at: Point = [0, 0];
  let start: Point = [0, 0];
  const stack: string[] = [];
  const numbers = (count: number): number[] => stack.splice(-count).map(Number);
  const finish = (isStroked: boolean): void => {
    if (isStroked) {
      lines.push(...path);
      curves.push(...pending);
    }
    [path, pending] = [[], []];
  };
  for (const token of content.match(/<[0-9A-Fa-f]*>|\[[^\]]*\]|\/[^\s/[\]<>]+|[^\s/[\]<>]+/g) ?? []) {
    switch (token) {
      case 'q':
        saved.push(matrix);
        break;
      case 'Q':
        matrix = saved.pop() ?? matrix;
        break;
      case 'cm':
        matrix = times(matrix, numbers(6) as unknown as Matrix);
        break;
      case 'm': {
        const [x, y] = numbers(2) as [number, number];
        at = start = on(matrix, [x, y]);
        break;
      }
      case 'l': {
        const [x, y] = numbers(2) as [number, number];
        const to = on(matrix, [x, y]);
        path.push([at, to]);
        at = to;
        break;
      }
      case 'c': {
        const [a, b, c, d, e, f] = numbers(6) as [number, number, number, number, number, number];
        const to = on(matrix, [e, f]);
        pending.push([at, on(matrix, [a, b]), on(matrix, [c, d]), to]);
        at = to;
        break;
      }
      case 'h':
        path.push([at, start]);
        at = start;
        break;
      case 'S':
      case 'B':
      case 'B*':
        finish(true);
        break;
      case 'f':
      case 'f*':
      case 'n':
        finish(false);
        break;
      case 'Do':
        forms.push([...matrix]);
        break;
      case 'Tm': {
        const [, , , , x, y] = numbers(6) as unknown as Matrix;
        textAt = on(matrix, [x, y]);
        break;
      }
      case 'Tj':
        textsAt.push(textAt);
        texts.push(decoded(stack.at(-1) ?? ''));
        break;
      default:
        stack.push(token);
    }
  }
  return { lines, curves, texts, textsAt, forms };
}

const decoded = (hex: string): string =>
  (hex.slice(1, -1).match(/../g) ?? []).map((pair) => String.fromCharCode(Number.parseInt(pair, 16))).join('');

export const lengthOf = ([a, b]: readonly [Point, Point]): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
