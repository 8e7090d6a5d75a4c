import type { ComponentChildren } from 'preact';
import type { Vec } from '../../../src/geometry/plane/vec.ts';

const radiusPx = 64;
/** From the finger to the nearest of it. */
const awayPx = 40;
const usual = 2.5;

interface Props {
  readonly at: Vec;
  /** The drawing in it, by its id; none where only what is given as children is in it. */
  readonly of: string | undefined;
  /** What it may not reach out of, in pixels. */
  readonly room: { readonly clientWidth: number; readonly clientHeight: number };
  readonly largerBy?: number | undefined;
  /** What lies beneath the drawing, in pixels of the pane. */
  readonly children?: ComponentChildren;
}

/** A round piece of the drawing, larger, above the finger that covers it; below or beside it where there is no room above. */
export function Loupe({ at, of, room, largerBy = usual, children }: Props) {
  const { x, y } = loupeCentre(at, room);
  return (
    <g class="loupe">
      <clipPath id="loupe-glass">
        <circle cx={x} cy={y} r={radiusPx} />
      </clipPath>
      <circle class="glass" cx={x} cy={y} r={radiusPx} />
      <g clip-path="url(#loupe-glass)">
        <g transform={`translate(${x} ${y}) scale(${largerBy}) translate(${-at.x} ${-at.y})`}>
          {children}
          {of !== undefined && <use href={`#${of}`} />}
        </g>
        <path class="cross" d={`M${x - radiusPx} ${y}h${2 * radiusPx}M${x} ${y - radiusPx}v${2 * radiusPx}`} />
      </g>
      <circle class="rim" cx={x} cy={y} r={radiusPx} />
    </g>
  );
}

function loupeCentre({ x, y }: Vec, { clientWidth: width, clientHeight: height }: Props['room']): Vec {
  const out = radiusPx + awayPx;
  const within = (value: number, size: number) =>
    Math.min(Math.max(value, radiusPx), Math.max(radiusPx, size - radiusPx));
  if (y > out + radiusPx) return { x: within(x, width), y: y - out };
  if (y + out + radiusPx < height) return { x: within(x, width), y: y + out };
  return { x: x > width / 2 ? x - out : x + out, y: within(y, height) };
}
