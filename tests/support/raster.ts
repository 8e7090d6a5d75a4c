import { execFileSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export const dpi = 600;
const pxPerMm = dpi / 25.4;

/** Whether poppler's pdftoppm is here to make pictures of pages. */
export function hasRasteriser(): boolean {
  try {
    execFileSync('pdftoppm', ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** A page as grey pixels, rows from the top. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** One page of a PDF at 600 dpi, by poppler. */
export function pictureOf(pdf: Uint8Array, page: number, folder: string): Picture {
  const [file, stem] = [join(folder, 'pages.pdf'), join(folder, 'page')];
  writeFileSync(file, pdf);
  execFileSync('pdftoppm', [
    '-r',
    String(dpi),
    '-gray',
    '-f',
    String(page),
    '-l',
    String(page),
    '-singlefile',
    file,
    stem,
  ]);
  const bytes = new Uint8Array(readFileSync(`${stem}.pgm`));
  rmSync(`${stem}.pgm`);
  const head = /^P5\s(\d+)\s(\d+)\s255\s/.exec(new TextDecoder('latin1').decode(bytes.subarray(0, 40)));
  if (head === null) throw new Error('no grey picture');
  return { width: Number(head[1]), height: Number(head[2]), grey: bytes.subarray(head[0].length) };
}

/** A window of a page in mm, from its lower left corner. */
export interface Window {
  readonly fromX: number;
  readonly toX: number;
  readonly fromY: number;
  readonly toY: number;
}

/** How dark each column of a window is on the whole, 0 to 1. */
export function columnInk(picture: Picture, { fromX, toX, fromY, toY }: Window): { mm: number; ink: number }[] {
  const rows = span(picture.height - toY * pxPerMm, picture.height - fromY * pxPerMm);
  return span(fromX * pxPerMm, toX * pxPerMm).map((x) => ({
    mm: (x + 0.5) / pxPerMm,
    ink: rows.reduce((sum, y) => sum + inkAt(picture, x, y), 0) / rows.length,
  }));
}

/** How dark each row of a window is on the whole, 0 to 1. */
export function rowInk(picture: Picture, { fromX, toX, fromY, toY }: Window): { mm: number; ink: number }[] {
  const columns = span(fromX * pxPerMm, toX * pxPerMm);
  return span(picture.height - toY * pxPerMm, picture.height - fromY * pxPerMm).map((y) => ({
    mm: (picture.height - y - 0.5) / pxPerMm,
    ink: columns.reduce((sum, x) => sum + inkAt(picture, x, y), 0) / columns.length,
  }));
}

const span = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(0, Math.round(to) - Math.round(from)) }, (_, i) => Math.round(from) + i);

const inkAt = ({ width, grey }: Picture, x: number, y: number): number => 1 - (grey[y * width + x] ?? 255) / 255;

/** The middles of the dark stretches of a profile, mm. */
export function middlesOf(profile: readonly { readonly mm: number; readonly ink: number }[], least: number): number[] {
  const middles: number[] = [];
  let [sum, weight] = [0, 0];
  for (const { mm, ink } of [...profile, { mm: 0, ink: 0 }]) {
    if (ink >= least) [sum, weight] = [sum + mm * ink, weight + ink];
    else if (weight > 0) {
      middles.push(sum / weight);
      [sum, weight] = [0, 0];
    }
  }
  return middles;
}

/** The middle of the cross nearest to a place, whose arms run through the whole of a window about it. */
export function crossNear(picture: Picture, x: number, y: number, halfMm: number): readonly [x: number, y: number] {
  const window = { fromX: x - halfMm, toX: x + halfMm, fromY: y - halfMm, toY: y + halfMm };
  const nearest = (middles: readonly number[], to: number): number => {
    const [best] = middles.toSorted((a, b) => Math.abs(a - to) - Math.abs(b - to));
    if (best === undefined) throw new Error(`no cross near ${x}, ${y}`);
    return best;
  };
  return [nearest(middlesOf(columnInk(picture, window), 0.5), x), nearest(middlesOf(rowInk(picture, window), 0.5), y)];
}
