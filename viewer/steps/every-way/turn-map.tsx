import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { JobFile } from '../../../src/files/job-file.ts';
import { mmIn } from '../../../src/job/length-text.ts';
import type { WayPoint } from '../../../src/ways/way-along.ts';
import type { App } from '../../app.ts';
import { handSteps } from '../../entry-handles.ts';
import type { TurnMap as MapShown } from '../../heavy/questions.ts';
import { heldByHome } from '../../job/way-edits.ts';
import { everyWayWords as words } from '../../words/every-way.ts';
import { arrowOf } from './arrow-keys.ts';
import { mapAxesOf } from './map-axes.ts';
import { MapHandles } from './map-handles.tsx';
import { MapFills, MapKey } from './map-key.tsx';
import { MapMarks } from './map-marks.tsx';
import { pointsOf } from './points-of.ts';

interface Props {
  readonly app: App;
  readonly job: JobFile;
  readonly map: MapShown;
  /** The way that was found, where it is another than the job's; and what it is called. */
  readonly found: { readonly points: readonly WayPoint[]; readonly name: string } | null;
}

/** The map of turns and stand-offs: turns across, stand-off up, home at the foot. */
export function TurnMap({ app, job, map, found }: Props) {
  const { fit } = job;
  const shown = app.reader.units.value ?? fit.units;
  const way = fit.offerUp ?? [];
  const points = pointsOf(fit);
  const element = useRef<HTMLElement>(null);
  const [width, setWidth] = useState(0);
  const [touched, setTouched] = useState<WayPoint | null>(null);
  const [said, say] = useState<readonly string[]>([]);
  useLayoutEffect(() => {
    if (element.current === null) return;
    const sized = new ResizeObserver(([entry]) => setWidth(Math.floor(entry?.contentRect.width ?? 0)));
    sized.observe(element.current);
    return () => sized.disconnect();
  }, []);
  const axes = useMemo(() => mapAxesOf(map, width), [map, width]);

  const tell = async (at: WayPoint, head: string, tail: readonly string[] = []): Promise<void> => {
    const now = app.job.now.peek();
    const met = now && (await app.answers.everyWay.metAt(now, at));
    if (met !== null) say([`${head}.`, ...words.met(met, at, shown), ...tail]);
  };
  const touch = (at: WayPoint): void => {
    setTouched(at);
    tell(at, words.place(at, shown));
  };
  const hold = (index: number): void => {
    const now = app.job.now.peek()?.fit;
    const at = now && pointsOf(now)[index];
    if (now === undefined || at === undefined) return;
    const held = heldByHome(now.offerUp ?? [], index);
    const texts = (['turn', 'standOff'] as const).flatMap((name) => (held[name] ? [words.held[name]] : []));
    setTouched(null);
    tell(at, words.position(index + 1, at, shown), texts);
  };
  const press = (event: KeyboardEvent): void => {
    const [across, up] = arrowOf(event);
    if (across === 0 && up === 0) return;
    event.preventDefault();
    const { turnRad, standOffMm } = touched ?? axes.place(axes.width / 2, axes.height / 2);
    const { turn, standOff } = handSteps[fit.units];
    touch(
      axes.place(
        axes.x(turnRad + (across * turn * Math.PI) / 180),
        axes.y(standOffMm + up * standOff * mmIn(fit.units)),
      ),
    );
  };
  return (
    <>
      <MapFills />
      <section class="turn-map" aria-label={words.map} ref={element} style={{ height: `${axes.height}px` }}>
        {width === 0 ? null : (
          <>
            <MapMarks
              app={app}
              map={map}
              axes={axes}
              units={shown}
              present={points}
              found={found?.points ?? null}
              touched={touched}
            />
            <button
              type="button"
              class="plot"
              style={{
                left: `${axes.plot.left}px`,
                top: `${axes.plot.top}px`,
                width: `${axes.plot.right - axes.plot.left}px`,
                height: `${axes.plot.bottom - axes.plot.top}px`,
              }}
              aria-label={words.plot}
              aria-describedby="map-help"
              onKeyDown={press}
              onClick={(event) => {
                if (event.detail === 0) return touch(touched ?? axes.place(axes.width / 2, axes.height / 2));
                const { left, top } = event.currentTarget.getBoundingClientRect();
                touch(axes.place(axes.plot.left + event.clientX - left, axes.plot.top + event.clientY - top));
              }}
            />
            <MapHandles
              app={app}
              way={way}
              points={points}
              axes={axes}
              topMm={map.topMm}
              units={fit.units}
              shown={shown}
              onHold={hold}
            />
          </>
        )}
      </section>
      <p role="status" class="met">
        {said.join(' ')}
      </p>
      <MapKey map={map} hasWay={points.length > 1} found={found?.name ?? null} />
      <p id="map-help" class="by-hand">
        {words.help}
      </p>
    </>
  );
}
