import type { PartDraft, PictureFile } from '../../../src/files/job-file.ts';
import { carried, type Homography } from '../../../src/intake/photo/homography.ts';
import { mmIn } from '../../../src/job/length-text.ts';
import type { Size, View } from '../../stage/view.ts';
import { Names } from '../outlines/names.tsx';
import { namesOfTouches } from './known-places.ts';
import { pxInPane } from './sheet-of-picture.ts';

interface Props {
  readonly part: PartDraft;
  readonly picture: PictureFile;
  readonly view: View;
  readonly chosen: number | null;
  readonly worst: number | null;
  /** What is said beside a point's name. */
  readonly off: (touch: number) => string;
  /** Where the picture is set: from the plane to its pixels. */
  readonly toPicture: Homography | null;
  readonly pane: Size;
}

/** The touched points, and faintly where the holes that were not touched must lie if all is right. */
export function TouchMarks({ part, picture: { touches }, view, chosen, worst, off, toPicture, pane }: Props) {
  const names = namesOfTouches(touches);
  const mm = mmIn(part.units);
  const expected = (part.holes ?? []).flatMap(({ id, at: [x, y] }) => {
    const isTouched = touches.some(({ hole }) => hole === id);
    const px = isTouched || toPicture === null ? null : carried(toPicture, { x: x * mm, y: y * mm });
    return px === null ? [] : [{ id, at: pxInPane(view, [px.x, px.y]) }];
  });
  const isNamedFirst = (i: number): boolean => i === chosen || i === worst;
  const named = touches
    .map(({ px }, i) => ({
      text: isNamedFirst(i) ? `${names[i]} ${off(i)}` : (names[i] ?? ''),
      at: pxInPane(view, px),
      isFirst: isNamedFirst(i),
    }))
    .sort((a, b) => Number(b.isFirst) - Number(a.isFirst));
  return (
    <g class="touches">
      <Names names={[...named, ...expected.map(({ id, at }) => ({ text: id, at }))]} pane={pane} />
      {expected.map(({ id, at: { x, y } }) => (
        <g key={`expected ${id}`} class="expected">
          <Cross x={x} y={y} r={7} />
        </g>
      ))}
      {touches.map(({ px }, i) => {
        const { x, y } = pxInPane(view, px);
        const kind = `${i === chosen ? ' now' : ''}${i === worst ? ' worst' : ''}`;
        return (
          <g key={`touch ${names[i]}`} class={`touch${kind}`}>
            <Cross x={x} y={y} r={i === chosen ? 16 : 11} />
            <circle cx={x} cy={y} r={i === chosen ? 11 : 7} />
          </g>
        );
      })}
    </g>
  );
}

/** Open in the middle, so that the place itself is seen. */
const Cross = ({ x, y, r }: { readonly x: number; readonly y: number; readonly r: number }) => (
  <path d={`M${x - r} ${y}h${r - 2}M${x + 2} ${y}h${r - 2}M${x} ${y - r}v${r - 2}M${x} ${y + 2}v${r - 2}`} />
);
