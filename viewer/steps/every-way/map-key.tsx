import type { TurnMap } from '../../heavy/questions.ts';
import { everyWayWords as words } from '../../words/every-way.ts';
import { diamond } from './map-marks.tsx';

const kinds = ['foul', 'near', 'unknown'] as const;

interface Props {
  readonly map: TurnMap;
  readonly hasWay: boolean;
  /** What the way that was found is called; null where there is none. */
  readonly found: string | null;
}

/** What is on the map, of what is there; the fills of the map are here, as fine on it. */
export const MapKey = ({ map, hasWay, found }: Props) => (
  <ul class="key">
    {kinds
      .filter((kind) => map.blocks[kind].length > 0)
      .map((kind) => (
        <li key={kind}>
          <svg class="sample" width={28} height={16} aria-hidden="true">
            <rect class={`of-map ${kind}`} x={1} y={1} width={26} height={14} />
          </svg>
          {words.key[kind]}
        </li>
      ))}
    {hasWay ? <Line kind="present" text={words.present} /> : null}
    {hasWay ? <Stands /> : null}
    {found === null ? null : <Line kind="found" text={found} />}
    {map.dowelsMm === 0 ? null : <Line kind="dowels" text={words.dowels} />}
  </ul>
);

const Line = ({ kind, text }: { readonly kind: string; readonly text: string }) => (
  <li>
    <svg class="sample" width={36} height={12} aria-hidden="true">
      <path class={kind} d="M2,6H34" />
    </svg>
    {text}
  </li>
);

const Stands = () => (
  <li>
    <svg class="sample" width={16} height={16} aria-hidden="true">
      <path class="stands" d={diamond(8, 8)} />
    </svg>
    {words.stands}
  </li>
);

/** Areas told apart by tone and hatching; what fouls is hatched as it is on the drawing. */
export const MapFills = () => (
  <svg class="unseen" aria-hidden="true">
    <defs>
      <pattern id="near-fill" width={7} height={7} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect class="near-tone" width={7} height={7} />
        <path class="near-lines" d="M0,3.5H7" />
      </pattern>
      <pattern id="unknown-fill" width={7} height={7} patternUnits="userSpaceOnUse">
        <rect class="unknown-tone" width={7} height={7} />
        <circle class="unknown-dots" cx={3.5} cy={3.5} r={1.1} />
      </pattern>
    </defs>
  </svg>
);
