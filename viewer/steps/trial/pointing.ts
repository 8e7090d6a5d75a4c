import { useState } from 'preact/hooks';
import type { Vec } from '../../../src/geometry/plane/vec.ts';
import type { App } from '../../app.ts';
import type { PlaceFound, PointedAt } from '../../heavy/questions.ts';
import { goesIn } from '../../job/trial-edits.ts';
import { reachPx } from '../../stage/gestures.ts';
import type { Pane } from '../../stage/pane.ts';
import { usePaneTool } from '../../stage/pane-tool.ts';
import { toPlane } from '../../stage/view.ts';
import { readingAt } from '../../trial-marks.ts';
import { trialWords as words } from '../../words/trial.ts';

/** Takes what lies under the hand as the place to be read next, at the last go; and gives it back. */
export async function pointAt(app: App, pointed: PointedAt): Promise<PlaceFound | null> {
  const job = app.job.now.peek();
  if (job === null) return null;
  const found = await app.answers.trial.placeAt(job, goesIn(job).at(-1) ?? null, pointed);
  if (app.reader.step.peek() !== 'trial-fit') return null;
  // the job may have become another under the thumb: what lies there is asked of that one
  if (app.job.now.peek() !== job) return pointAt(app, pointed);
  app.answers.trial.reading.value = found?.kind === 'place' ? found.place : null;
  return found;
}

/** Taps on the pane, and Enter at its middle, take the place there; gives back what there is to say of one that cannot be read. */
export function usePointing(app: App, pane: Pane): string {
  const [said, say] = useState('');
  const take = async (at: Vec, withinPx: number): Promise<void> => {
    const view = pane.view();
    const found = await pointAt(app, { at: toPlane(view, at), withinMm: withinPx / view.pxPerMm, on: null });
    say(
      found === null ? words.nothingThere : found.kind === 'nothing-beside' ? words.nothingBeside(found.section) : '',
    );
  };
  usePaneTool(
    pane,
    () => ({
      onTap: (at, event) => {
        const touched = readingAt(app, pane.view(), at);
        if (touched === null) take(at, reachPx(event));
        else app.answers.trial.touched.value = touched;
        return true;
      },
    }),
    ({ key, ctrlKey, metaKey, altKey }) => {
      if (key !== 'Enter' || ctrlKey || metaKey || altKey) return false;
      const { width, height } = pane.size();
      take({ x: width / 2, y: height / 2 }, Number.POSITIVE_INFINITY);
      return true;
    },
  );
  return said;
}
