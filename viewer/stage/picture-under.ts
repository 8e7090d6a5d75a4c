import { useEffect, useRef } from 'preact/hooks';
import type { Vec } from '../../src/geometry/plane/vec.ts';
import { carried, chainedMaps, type Homography, stretchAt, weightAt } from '../../src/intake/photo/homography.ts';
import type { PictureSize } from '../../src/intake/photo/orientation.ts';
import type { Pane } from './pane.ts';
import type { View } from './view.ts';

/** A picture to lie under a pane. */
export interface Beneath {
  readonly url: string;
  readonly size: PictureSize;
  /** From its pixels to the plane, mm, y up; the weight of its middle is positive. */
  readonly toPlane: Homography;
  /** 0 to 1. */
  readonly strength: number;
}

/** From the picture's pixels to the pane's. */
export const toPaneMap = ({ toPlane }: Pick<Beneath, 'toPlane'>, { pxPerMm, origin }: View): Homography =>
  chainedMaps([pxPerMm, 0, origin.x, 0, -pxPerMm, origin.y, 0, 0, 1], toPlane);

/** As CSS writes it, by columns; what lies beyond the horizon the browser cuts off. */
export function matrix3dOf(map: Homography, { width, height }: PictureSize): string {
  const scale = Math.abs(weightAt(map, { x: width / 2, y: height / 2 })) || 1;
  const [a, b, c, d, e, f, g, h, i] = map.map((value) => value / scale) as unknown as Homography;
  return `matrix3d(${[a, d, 0, g, b, e, 0, h, 0, 0, 1, 0, c, f, 0, i].join()})`;
}

/** The picture about one place of the pane, to first order, as an SVG transform; null where it is not seen there. */
export function matrixNear(beneath: Beneath, fromPlane: Homography, view: View, place: Vec): string | null {
  const at = { x: (place.x - view.origin.x) / view.pxPerMm, y: (view.origin.y - place.y) / view.pxPerMm };
  const px = carried(fromPlane, at);
  if (px === null) return null;
  const [a, b, c, d] = stretchAt(toPaneMap(beneath, view), px);
  return `matrix(${a} ${c} ${b} ${d} ${place.x - a * px.x - b * px.y} ${place.y - c * px.x - d * px.y})`;
}

/** Keeps a picture under a pane, wherever the pane's view goes. */
export function usePictureUnder(pane: Pane, beneath: Beneath | null): void {
  const image = useRef<HTMLImageElement | null>(null);
  const url = beneath?.url ?? null;
  useEffect(() => {
    if (url === null) return;
    const own = document.createElement('img');
    own.src = url;
    own.alt = '';
    own.draggable = false;
    pane.under.append(own);
    image.current = own;
    return () => {
      own.remove();
      image.current = null;
    };
  }, [pane, url]);
  const toPlane = beneath?.toPlane.join();
  useEffect(() => {
    if (beneath === null) return;
    return pane.onView((view) => {
      if (image.current === null) return;
      image.current.style.transform = matrix3dOf(toPaneMap(beneath, view), beneath.size);
    });
  }, [pane, url, toPlane]);
  useEffect(() => {
    if (image.current !== null && beneath !== null) image.current.style.opacity = String(beneath.strength);
  }, [url, beneath?.strength]);
}
