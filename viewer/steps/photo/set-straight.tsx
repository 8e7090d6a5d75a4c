import { useEffect, useRef, useState } from 'preact/hooks';
import type { JobFile, PartDraft } from '../../../src/files/job-file.ts';
import type { Vec } from '../../../src/geometry/plane/vec.ts';
import type { App } from '../../app.ts';
import { ChoiceField, NumberField } from '../../fields.tsx';
import { apart } from '../../job/arc.ts';
import {
  placeOfTouch,
  withDistance,
  withoutPicture,
  withoutTouch,
  withPictureChanged,
  withTouchChanged,
} from '../../job/picture-edits.ts';
import { useLengths } from '../../lengths.ts';
import type { Pane } from '../../stage/pane.ts';
import { usePaneTool } from '../../stage/pane-tool.ts';
import { usePictureUnder } from '../../stage/picture-under.ts';
import type { View } from '../../stage/view.ts';
import { photoWords as words } from '../../words/photo.ts';
import { useLatest, usePainted } from '../outlines/painted.ts';
import { HowWell } from './how-well.tsx';
import { type NextPlace, namesOfTouches, nextPlace } from './known-places.ts';
import { NextPlaceChoice } from './next-place.tsx';
import { PictureLoupe } from './picture-loupe.tsx';
import { SaidOfSetting } from './said-of-setting.tsx';
import { nearness, sheetExtent, sheetMap, sheetMapBack } from './sheet-of-picture.ts';
import { TouchMarks } from './touch-marks.tsx';
import { offText, TouchTable, worstTouch } from './touch-table.tsx';
import { type PictureContext, pressPictureKey, touchingPicture, touchNext } from './touching-picture.ts';
import type { OpenPicture } from './use-picture.ts';

interface Props {
  readonly app: App;
  readonly job: JobFile;
  readonly part: PartDraft;
  readonly opened: OpenPicture;
  readonly pane: Pane;
  readonly onDone: () => void;
}

/** A picture as a sheet of its own, in which places that are known are touched. */
export function SetStraight({ app, job, part, opened, pane, onDone }: Props) {
  const { picture, loaded, broken, set } = opened;
  const [view, setView] = useState<View>(() => pane.view());
  const [chosen, choose] = useState<number | null>(null);
  const [wanted, setWanted] = useState<NextPlace | null>(null);
  const [said, say] = useState('');
  const [under, magnify] = useState<Vec | null>(null);
  const edit: PictureContext['edit'] = (change, gesture) => app.job.edit(change, gesture);
  const next = nextPlace(part, picture, wanted);
  const context: PictureContext = {
    job,
    part,
    picture,
    size: loaded?.size ?? null,
    view,
    next,
    chosen,
    edit,
    choose,
    goOn: () => setWanted(next.kind === 'typed' ? { kind: 'typed', at: null } : null),
    say,
    magnify,
  };
  const latest = useLatest(context);
  const heading = useRef<HTMLHeadingElement>(null);
  // what is to be done is said there
  useEffect(() => heading.current?.scrollIntoView({ block: 'start' }), []);
  const beneath = loaded && { url: loaded.url, size: loaded.size, toPlane: sheetMap, strength: 1 };

  useEffect(() => pane.onView(setView), [pane]);
  useEffect(() => {
    if (loaded !== null) pane.fit(sheetExtent(loaded.size));
  }, [pane, loaded]);
  usePaneTool(
    pane,
    () => touchingPicture(() => latest.current),
    (event) => pressPictureKey(latest.current, event),
  );
  usePictureUnder(pane, beneath);
  const setting = set?.setting.ok ? set.setting.value : null;
  usePainted(
    pane.labels,
    <>
      <TouchMarks
        part={part}
        picture={picture}
        view={view}
        chosen={chosen}
        worst={picture.touches.length > 4 ? worstTouch(set, picture.touches.length) : null}
        off={(i) => (picture.touches.length > 4 ? offText(part, set, i) : '')}
        toPicture={setting?.fit.toPicture ?? null}
        pane={pane.size()}
      />
      {under !== null && beneath && (
        <PictureLoupe
          at={under}
          beneath={beneath}
          fromPlane={sheetMapBack}
          view={view}
          pane={pane}
          largerBy={lensFor(view)}
        />
      )}
    </>,
  );

  const change = (changes: Parameters<typeof withPictureChanged>[2]): void =>
    edit((job) => withPictureChanged(job, picture.id, changes));
  const onKeyDown = (event: KeyboardEvent): void => {
    // on a button Backspace keeps its own meaning
    if (event.key !== 'Backspace' && pressPictureKey(latest.current, event)) event.preventDefault();
  };
  const middle = (): Vec => ({ x: pane.element.clientWidth / 2, y: pane.element.clientHeight / 2 });
  return (
    <section class="outlines photo" aria-label={words.heading(picture.name)}>
      <h2 ref={heading}>{words.heading(picture.name)}</h2>
      {loaded === null && <p class="hint">{broken ? words.broken : words.loading}</p>}
      <ChoiceField
        label={words.taken}
        value={picture.squareOn ? 'square-on' : 'points'}
        choices={[
          ['points', words.methods.points],
          ['square-on', words.methods['square-on']],
        ]}
        onSet={(method) => change({ squareOn: method === 'square-on' || undefined })}
      />
      <NextPlaceChoice key={picture.touches.length} part={part} picture={picture} next={next} setNext={setWanted} />
      <p class="hint">{words.tapHint(next.kind === 'hole' ? next.id : words.theSpot)}</p>
      <p class="said" role="alert">
        {said}
      </p>
      <TouchTable
        part={part}
        picture={picture}
        set={set}
        chosen={chosen}
        choose={choose}
        remove={(i) => {
          edit((job) => withoutTouch(job, picture.id, i));
          choose(null);
        }}
        onKeyDown={onKeyDown}
      />
      <PlaceOfChosen part={part} context={context} />
      <SaidOfSetting part={part} picture={picture} set={loaded === null ? null : set} />
      <button type="button" class="done" onClick={onDone}>
        {words.done}
      </button>
      <HowWell part={part} picture={picture} change={change} />
      <p class="hint">{picture.touches.length > 4 ? `${words.offHint} ${words.keyHint}` : words.keyHint}</p>
      <div class="row">
        <button type="button" onClick={() => touchNext(latest.current, middle())}>
          {words.putInMiddle}
        </button>
        <button
          type="button"
          class="quiet"
          onClick={() => {
            app.reader.picture.value = null;
            edit((job) => withoutPicture(job, picture.id));
          }}
        >
          {words.removePicture}
        </button>
      </div>
    </section>
  );
}

/** A lens shows a pixel of the picture at least as large as one of the screen, where that is not too much. */
const lensFor = (view: View): number => Math.min(8, Math.max(2.5, 1 / nearness(view)));

/** The figures of a chosen point that is no hole; for two such, their distance. */
function PlaceOfChosen({ part, context }: { readonly part: PartDraft; readonly context: PictureContext }) {
  const { picture, chosen, edit } = context;
  const { touches, squareOn } = picture;
  const [first, second] = touches;
  const touch = chosen === null ? undefined : touches[chosen];
  const figures = useLengths(part.units);
  if (squareOn && first && second && first.hole === undefined && second.hole === undefined) {
    return (
      <NumberField
        label={words.distance}
        figures={figures}
        value={apart(placeOfTouch(part, first), placeOfTouch(part, second))}
        fits={(value) => value > 0}
        onSet={(distance) => edit((job) => withDistance(job, picture.id, distance))}
      />
    );
  }
  if (chosen === null || touch === undefined || touch.hole !== undefined) return null;
  const put = (x: number, y: number): void => edit((job) => withTouchChanged(job, picture.id, chosen, { at: [x, y] }));
  const [x, y] = touch.at;
  const name = namesOfTouches(touches)[chosen] ?? '';
  return (
    <div class="pair">
      <NumberField label={`${name}, x`} figures={figures} value={x} onSet={(to) => put(to, y)} />
      <NumberField label={`${name}, y`} figures={figures} value={y} onSet={(to) => put(x, to)} />
    </div>
  );
}
