import { useLayoutEffect, useRef } from 'preact/hooks';
import { NumberField } from '../../fields.tsx';
import { alongEdge, xyOf } from '../../job/arc.ts';
import {
  at,
  type PointList,
  withBulge,
  withoutVertex,
  withStraightEdge,
  withVertexAt,
  withVertexOn,
} from '../../job/point-edits.ts';
import { withPointAdded, withRun } from '../../job/run-edits.ts';
import { plainFigures, useLengths } from '../../lengths.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import type { Selection } from './selection.ts';
import { withPoints } from './selection.ts';
import type { TraceContext } from './touch.ts';

interface Props {
  readonly context: TraceContext;
  readonly chosen: Exclude<Selection, { readonly kind: 'hole' }>;
  readonly points: PointList;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

const bulges = plainFigures('', 4);

/** The points of an outline or a run as figures to type over. */
export function PointsTable({ context, chosen, points, onKeyDown }: Props) {
  const { sheet, look, edit } = context;
  const lengths = useLengths(sheet.job.parts[sheet.file]?.units ?? 'mm');
  const put = (next: ReturnType<typeof withoutVertex>): void =>
    edit((job) => withPoints(job, sheet.file, chosen, next));
  const remove = (i: number): void => {
    const next = chosen.kind === 'run' ? points.filter((_, k) => k !== i) : withoutVertex(points, i);
    put(next);
    look({ chosen: next === null || next.length === 0 ? null : { ...chosen, vertex: Math.min(i, next.length - 1) } });
  };
  const { vertex } = chosen;
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const row = box.current?.querySelector<HTMLElement>('.now');
    if (box.current && row) box.current.scrollTop = row.offsetTop - box.current.clientHeight / 2;
  }, [vertex]);
  const add = (): void => {
    const after = vertex ?? points.length - 1;
    if (chosen.kind === 'run' && after === points.length - 1) {
      const [x, y] = at(points, after);
      edit((job) => withRun(job, chosen.run, (run) => withPointAdded(run, [x + 10, y])));
    } else {
      const middle = alongEdge(xyOf(at(points, after)), xyOf(at(points, after + 1)), at(points, after)[2] ?? 0, 0.5);
      put(withVertexOn(points, after, middle));
    }
    look({ chosen: { ...chosen, vertex: after + 1 } });
  };
  return (
    <>
      <div class="scrolled" ref={box}>
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">{words.point}</th>
              <th scope="col">x {lengths.unit}</th>
              <th scope="col">y {lengths.unit}</th>
              <th scope="col">{words.bulge}</th>
            </tr>
          </thead>
          <tbody>
            {points.map((point, i) => (
              <tr key={`${i} of ${points.length}`} class={i === vertex ? 'now' : ''}>
                <th scope="row">
                  <button
                    type="button"
                    aria-pressed={i === vertex}
                    aria-label={words.choosePoint(i + 1)}
                    onClick={() => look({ chosen: { ...chosen, vertex: i } })}
                    onKeyDown={onKeyDown}
                  >
                    {i + 1}
                  </button>
                </th>
                <td>
                  <NumberField
                    bare
                    label={`${words.choosePoint(i + 1)}, x`}
                    value={point[0]}
                    figures={lengths}
                    onSet={(x) => put(withVertexAt(points, i, [x, point[1]]))}
                  />
                </td>
                <td>
                  <NumberField
                    bare
                    label={`${words.choosePoint(i + 1)}, y`}
                    value={point[1]}
                    figures={lengths}
                    onSet={(y) => put(withVertexAt(points, i, [point[0], y]))}
                  />
                </td>
                <td>
                  <NumberField
                    bare
                    label={`${words.choosePoint(i + 1)}, ${words.bulge}`}
                    value={point[2] ?? 0}
                    figures={bulges}
                    onSet={(bulge) => put(withBulge(points, i, bulge))}
                    onClear={() => put(withStraightEdge(points, i))}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="hint">{words.keyHint}</p>
      <div class="row">
        <button type="button" onClick={add}>
          {words.addPoint}
        </button>
        {vertex !== null && (
          <button type="button" onClick={() => remove(vertex)}>
            {words.removePoint(vertex + 1)}
          </button>
        )}
        {vertex !== null && (points[vertex]?.[2] ?? 0) !== 0 && (
          <button type="button" onClick={() => put(withStraightEdge(points, vertex))}>
            {words.straighten}
          </button>
        )}
      </div>
    </>
  );
}
