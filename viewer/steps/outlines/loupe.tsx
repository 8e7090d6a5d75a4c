import type { Point } from '../../stage/view.ts';

const radiusPx = 64;
const largerBy = 2.5;

/** A round piece of the drawing, larger, above the finger that covers it; below it where there is no room above. */
export function Loupe({ at, of, width }: { readonly at: Point; readonly of: string; readonly width: number }) {
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
        <use href={`#${of}`} transform={`translate(${x} ${y}) scale(${largerBy}) translate(${-at.x} ${-at.y})`} />
        <path class="cross" d={`M${x - radiusPx} ${y}h${2 * radiusPx}M${x} ${y - radiusPx}v${2 * radiusPx}`} />
      </g>
      <circle class="rim" cx={x} cy={y} r={radiusPx} />
    </g>
  );
}
