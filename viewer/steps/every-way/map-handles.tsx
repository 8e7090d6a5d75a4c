import { useRef } from 'preact/hooks';
import type { PositionFile } from '../../../src/files/fit-file.ts';
import { mmIn } from '../../../src/job/length-text.ts';
import type { Units } from '../../../src/job/lengths.ts';
import type { WayPoint } from '../../../src/ways/way-along.ts';
import type { App } from '../../app.ts';
import { handSteps } from '../../entry-handles.ts';
import { everyWayWords as words } from '../../words/every-way.ts';
import { arrowOf } from './arrow-keys.ts';
import { Grip } from './grip.ts';
import type { MapAxes } from './map-axes.ts';

interface Props {
  readonly app: App;
  readonly way: readonly PositionFile[];
  readonly points: readonly WayPoint[];
  readonly axes: MapAxes;
  readonly topMm: number;
  /** The units of the fit, and those that are read. */
  readonly units: Units;
  readonly shown: Units;
  /** Called with the position that is held, and after each of its moves. */
  readonly onHold: (index: number) => void;
}

interface Held {
  readonly grip: Grip;
  /** From the pointer to the middle of the handle, so that it does not jump into the hand. */
  readonly off: { readonly x: number; readonly y: number };
  /** Where it was pressed, until it is plain that it is dragged: a finger that only touches trembles too. */
  from: { readonly x: number; readonly y: number } | null;
}

const tapPx = 4;

/** The positions of the way in but home, to be dragged, or moved by arrow keys. */
export function MapHandles(props: Props) {
  const { app, way, points, axes, topMm, units, shown, onHold } = props;
  const held = useRef<Held | null>(null);
  const keyed = useRef<Grip | null>(null);
  const steps = handSteps[units];
  const centreOf = ({ turnRad, standOffMm }: WayPoint) => ({
    x: axes.x(turnRad),
    y: axes.y(Math.min(standOffMm, topMm)),
  });
  const take = (event: PointerEvent & { readonly currentTarget: HTMLElement }, index: number): void => {
    const point = points[index];
    if (point === undefined || event.button !== 0) return;
    if (event.isTrusted) event.currentTarget.setPointerCapture(event.pointerId);
    const { x, y } = centreOf(point);
    const from = { x: event.clientX, y: event.clientY };
    held.current = { grip: new Grip(app, index), off: { x: x - from.x, y: y - from.y }, from };
    onHold(index);
  };
  const drag = (event: PointerEvent): void => {
    if (held.current === null) return;
    const { grip, off, from: pressed } = held.current;
    if (pressed !== null && Math.hypot(event.clientX - pressed.x, event.clientY - pressed.y) < tapPx) return;
    held.current.from = null;
    const to = axes.place(event.clientX + off.x, event.clientY + off.y);
    const from = way[grip.index]?.standOff ?? 0;
    // above the map there is more room than it shows
    const isBeyond = to.standOffMm >= topMm && from * mmIn(units) >= topMm;
    grip.moveTo({
      turn: onStep((to.turnRad * 180) / Math.PI, steps.turn),
      standOff: isBeyond ? from : onStep(to.standOffMm / mmIn(units), steps.standOff),
    });
    onHold(grip.index);
  };
  const press = (event: KeyboardEvent, index: number): void => {
    const [across, up] = arrowOf(event);
    if (across === 0 && up === 0) return;
    event.preventDefault();
    if (keyed.current?.index !== index || !keyed.current.holds) keyed.current = new Grip(app, index);
    const { turn = 0, standOff = 0 } = way[index] ?? {};
    keyed.current.moveTo({
      turn: plain(turn + across * steps.turn),
      standOff: Math.max(0, plain(standOff + up * steps.standOff)),
    });
    onHold(index);
  };
  return (
    <>
      {points.slice(0, -1).map((point, i) => {
        const { x, y } = centreOf(point);
        return (
          <button
            key={i}
            type="button"
            class="grip"
            style={{ left: `${x}px`, top: `${y}px` }}
            aria-label={words.position(i + 1, point, shown)}
            aria-describedby="map-help"
            onPointerDown={(event) => take(event, i)}
            onPointerMove={drag}
            onPointerUp={() => {
              held.current = null;
            }}
            onPointerCancel={() => {
              held.current?.grip.abandon();
              held.current = null;
            }}
            onKeyDown={(event) => press(event, i)}
            onFocus={() => onHold(i)}
            onBlur={() => {
              keyed.current = null;
            }}
          >
            <span>{i + 1}</span>
          </button>
        );
      })}
    </>
  );
}

const onStep = (value: number, step: number): number => plain(Math.round(value / step) * step);

/** No digits that only arithmetic brings, and no minus before nothing. */
const plain = (value: number): number => Number(value.toFixed(6)) + 0;
