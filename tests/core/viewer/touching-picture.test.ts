import { describe, expect, it } from 'vitest';
import type { JobFile, PartDraft } from '../../../src/files/job-file.ts';
import { changed, startingWith } from '../../../viewer/job/history.ts';
import { pictureOf, withPicture, withTouch } from '../../../viewer/job/picture-edits.ts';
import type { View } from '../../../viewer/stage/view.ts';
import { pxInPane } from '../../../viewer/steps/photo/sheet-of-picture.ts';
import { touchingPicture } from '../../../viewer/steps/photo/touching-picture.ts';
import { blockFile, smallJob } from '../../support/small-job.ts';

const view: View = { pxPerMm: 10, origin: { x: 0, y: 0 } };
const photo = { part: 'block.part.json', name: 'face.jpg', mediaType: 'image/jpeg', data: '' } as const;
const touched = withTouch(withPicture(smallJob, 'p', photo), 'p', { px: [100, 200], at: [0, 0], hole: 'D1' });

/** A finger on the touched point, and what it has done to the job and to the lens. */
function finger() {
  let history = startingWith<JobFile>(touched);
  const lens: unknown[] = [];
  const ignore = (): void => {};
  const tool = touchingPicture(() => ({
    job: history.now,
    part: blockFile as unknown as PartDraft,
    picture: pictureOf(history.now, 'p') as NonNullable<ReturnType<typeof pictureOf>>,
    size: { width: 1000, height: 1000 },
    view,
    next: { kind: 'typed', at: null },
    chosen: null,
    edit: (change, gesture) => {
      history = changed(history, change(history.now), gesture);
    },
    choose: ignore,
    goOn: ignore,
    say: ignore,
    magnify: (place) => lens.push(place),
  }));
  const event = { pointerType: 'touch' } as PointerEvent;
  tool.onPress?.(pxInPane(view, [100, 200]), event);
  tool.onDrag?.(pxInPane(view, [150, 260]), event);
  return { tool, event, lens, history: () => history };
}

describe('a point of a picture under the finger', () => {
  it('goes where it is dragged', () => {
    const { tool, event, history } = finger();
    tool.onRelease?.({ x: 0, y: 0 }, event);
    expect(pictureOf(history().now, 'p')?.touches[0]?.px).toEqual([150, 260]);
    expect(history().past).toHaveLength(1);
  });

  it('is back where it was once a second finger makes a pinch of it, with nothing to undo and the lens gone', () => {
    const { tool, event, lens, history } = finger();
    tool.onAbandon?.();
    expect(history()).toMatchObject({ now: touched, past: [] });
    expect(lens.at(-1)).toBeNull();
    tool.onDrag?.(pxInPane(view, [500, 500]), event);
    expect(history().now).toBe(touched);
  });
});
