import type { ComponentChildren } from 'preact';
import type { Point } from '../../stage/view.ts';

const radiusPx = 64;
const usual = 2.5;

interface Props {
  readonly at: Point;
  /** The drawing in it, by its id; none where only what is given as children is in it. */
  readonly of: string | undefined;
  readonly width: number;
  readonly largerBy?: number | undefined;
  /** What lies beneath the drawing, in pixels of the pane. */
  readonly children?: ComponentChildren;
}

/** A round piece of the drawing, larger, above the finger that covers it; below it where there is no room above. */
export function Loupe({ at, of, width, largerBy = usual, children }: Props) {
  const above = at.y > 2 * radiusPx + 40;
  const x = Math.min(Math.max(at.x, radiusPx), Math.max(radiusPx, width - radiusPx));
  const y = above ? at.y - radiusPx - 40 : at.y + radiusPx + 40;
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
