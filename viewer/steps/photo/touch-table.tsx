import type { PartDraft, PictureFile } from '../../../src/files/job-file.ts';
import { fineLength } from '../../../src/job/length-text.ts';
import type { PictureSet } from '../../heavy/set-straight.ts';
import { photoWords as words } from '../../words/photo.ts';
import { namesOfTouches } from './known-places.ts';

interface Props {
  readonly part: PartDraft;
  readonly picture: PictureFile;
  readonly set: PictureSet | null;
  readonly chosen: number | null;
  readonly choose: (touch: number) => void;
  readonly remove: (touch: number) => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** The point that the others put furthest from its place; null where there is nothing to tell by. */
export function worstTouch(set: PictureSet | null, count: number): number | null {
  const points = set?.setting.ok ? set.setting.value.points : [];
  if (points.length !== count) return null;
  let worst: number | null = null;
  points.forEach(({ leaveOneOutMm }, i) => {
    if (leaveOneOutMm !== null && leaveOneOutMm > (worst === null ? -1 : (points[worst]?.leaveOneOutMm ?? -1)))
      worst = i;
  });
  return worst;
}

/** How far from its place the others put a point, in words; a dash where that is not known. */
export function offText({ units }: PartDraft, set: PictureSet | null, touch: number): string {
  const mm = (set?.setting.ok ? set.setting.value.points[touch]?.leaveOneOutMm : null) ?? null;
  return mm === null ? '–' : fineLength(mm, units);
}

/** Each touched point with what the others make of it. */
export function TouchTable({ part, picture: { touches }, set, chosen, choose, remove, onKeyDown }: Props) {
  const names = namesOfTouches(touches);
  const setting = set?.setting.ok && set.setting.value.points.length === touches.length ? set.setting.value : null;
  const worst = worstTouch(set, touches.length);
  const off = (i: number): string => {
    const mark = setting?.suspects.includes(i) ? words.doubtful : i === worst ? words.worst : null;
    return [offText(part, setting && set, i), ...(mark === null ? [] : [mark])].join(', ');
  };
  if (touches.length === 0) return null;
  return (
    <table class="figures touched" aria-label={words.touches}>
      <thead>
        <tr>
          <th scope="col">{words.point}</th>
          <th scope="col">{words.off}</th>
          <td />
        </tr>
      </thead>
      <tbody>
        {touches.map((_, i) => {
          const name = names[i] ?? '';
          return (
            <tr key={name} class={`${i === chosen ? 'now' : ''}${i === worst ? ' worst' : ''}`}>
              <th scope="row">
                <button
                  type="button"
                  aria-pressed={i === chosen}
                  aria-label={words.choose(name)}
                  onClick={() => choose(i)}
                  onKeyDown={onKeyDown}
                >
                  {name}
                </button>
              </th>
              <td>{off(i)}</td>
              <td>
                <button type="button" aria-label={words.remove(name)} onClick={() => remove(i)}>
                  ×
                </button>
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
