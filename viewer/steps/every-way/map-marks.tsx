import { useMemo } from 'preact/hooks';
import type { Units } from '../../../src/job/lengths.ts';
import type { WayPoint } from '../../../src/ways/way-along.ts';
import type { App } from '../../app.ts';
import type { TurnMap } from '../../heavy/questions.ts';
import { everyWayWords as words } from '../../words/every-way.ts';
import type { MapAxes } from './map-axes.ts';

interface Props {
  readonly app: App;
  readonly map: TurnMap;
  readonly axes: MapAxes;
  readonly units: Units;
  readonly present: readonly WayPoint[];
  /** The way that was found. */
  readonly found: readonly WayPoint[] | null;
  readonly touched: WayPoint | null;
}

const degree = Math.PI / 180;

/** All of the map that is only looked at. */
export function MapMarks({ app, map, axes, units, present, found, touched }: Props) {
  const { width, height, plot, x, y } = axes;
  const still = useMemo(() => <Still map={map} axes={axes} units={units} />, [map, axes, units]);
  return (
    <svg width={width} height={height} aria-hidden="true">
      <defs>
        <clipPath id="map-plot">
          <rect x={plot.left} y={plot.top} width={plot.right - plot.left} height={plot.bottom - plot.top} />
        </clipPath>
      </defs>
      {still}
      <g clip-path="url(#map-plot)">
        <path class="halo" d={lineOf(present, axes)} />
        <path class="present" d={lineOf(present, axes)} />
        {found === null ? null : (
          <>
            <path class="halo" d={lineOf(found, axes)} />
            <path class="found" d={lineOf(found, axes)} />
          </>
        )}
      </g>
      <circle class="home" cx={x(0)} cy={y(0)} r={6} />
      <Stands app={app} axes={axes} />
      {touched === null ? null : (
        <g class="touched">
          <circle class="halo" cx={x(touched.turnRad)} cy={y(touched.standOffMm)} r={9} />
          <circle class="ring" cx={x(touched.turnRad)} cy={y(touched.standOffMm)} r={9} />
        </g>
      )}
    </svg>
  );
}

/** Where the part stands on its way in, as far as the map reaches. */
function Stands({ app, axes: { plot, x, y } }: Pick<Props, 'app' | 'axes'>) {
  const stop = app.reader.stop.value;
  if (stop === null || stop.position.shift.x !== 0 || stop.position.shift.y !== 0) return null;
  const [cx, cy] = [x(stop.position.turnRad), y(stop.position.standOffMm)];
  if (cx < plot.left || cx > plot.right || cy < plot.top || cy > plot.bottom) return null;
  return <path class="stands" d={diamond(cx, cy)} />;
}

export const diamond = (x: number, y: number): string => `M${x - 7},${y}l7,-7l7,7l-7,7Z`;

const lineOf = (way: readonly WayPoint[], { x, y }: MapAxes): string =>
  way.map(({ turnRad, standOffMm }, i) => `${i === 0 ? 'M' : 'L'}${x(turnRad)},${y(standOffMm)}`).join('');

/** What no hand moves: blocks, figures and frame. */
function Still({ map, axes, units }: Pick<Props, 'map' | 'axes' | 'units'>) {
  const { plot, x, y } = axes;
  const [across, up] = [`H${plot.right}`, `V${plot.top}`];
  const blocks = (kind: keyof TurnMap['blocks']): string =>
    map.blocks[kind]
      .filter(({ fromMm }) => fromMm < map.topMm)
      .map(({ fromMm, toMm, turns: { fromRad, toRad } }) => {
        const [left, right, top, bottom] = [x(fromRad), x(toRad), y(Math.min(toMm, map.topMm)), y(fromMm)];
        return `M${left},${bottom}V${top}H${right}V${bottom}Z`;
      })
      .join('');
  return (
    <>
      <rect class="free" x={plot.left} y={plot.top} width={plot.right - plot.left} height={plot.bottom - plot.top} />
      {(['unknown', 'near', 'foul'] as const).map((kind) => (
        <path key={kind} class={`of-map ${kind}`} d={blocks(kind)} />
      ))}
      <path class="straight-in" d={`M${x(0)},${plot.bottom}${up}`} />
      {map.dowelsMm === 0 ? null : <path class="dowels" d={`M${plot.left},${y(map.dowelsMm)}${across}`} />}
      <path class="frame" d={`M${plot.left},${plot.bottom}${up}${across}V${plot.bottom}Z`} />
      {map.turnTicks.map(({ at, text }) => (
        <g key={text}>
          <path class="frame" d={`M${x(at * degree)},${plot.bottom}v5`} />
          <text x={x(at * degree)} y={plot.bottom + 18} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      {map.standOffTicks.map(({ at, text }) => (
        <g key={text}>
          <path class="frame" d={`M${plot.left},${y(at)}h-5`} />
          <text x={plot.left - 8} y={y(at) + 4} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      <text x={0} y={14}>
        {words.standOffAxis(units)}
      </text>
      <text x={plot.right} y={plot.bottom + 35} text-anchor="end">
        {words.turnAxis}
      </text>
    </>
  );
}
