import { useState } from 'preact/hooks';
import type { PartDraft, PictureFile } from '../../../src/files/job-file.ts';
import type { LoopFile } from '../../../src/files/part-file.ts';
import { shiftAtDepthMm, trueAtDepth } from '../../../src/intake/photo/at-depth.ts';
import { fineLength, mmIn } from '../../../src/job/length-text.ts';
import { NumberField } from '../../fields.tsx';
import type { CameraPosition } from '../../heavy/set-straight.ts';
import { vertexAt, type XY, xyOf } from '../../job/arc.ts';
import { holderAt, type Place, withDetails, withPart } from '../../job/part-edits.ts';
import { withPictureChanged } from '../../job/picture-edits.ts';
import { depthName } from '../../job/picture-names.ts';
import { useLengths } from '../../lengths.ts';
import { errorIn, photoWords as words } from '../../words/photo.ts';
import { circleOf, pointsOf, type Selection, withCircle, withPoints } from '../outlines/selection.ts';
import type { TraceContext } from '../outlines/touch.ts';
import { looksAtFace, tracedDepth } from './asked-of-picture.ts';
import { forPlace, type OverPicture } from './over-picture.ts';
import { stated } from './stated-error.ts';

interface Props {
  readonly context: TraceContext;
  readonly over: OverPicture;
  readonly part: PartDraft;
  readonly place: Place;
}

/** At which depth a place is traced over a picture; the picture is shown for that. */
export function TracedDepth({ context: { edit }, over, part, place }: Props) {
  const { picture, camera, setting } = over;
  const { units } = part;
  const figures = useLengths(units);
  const atFace = looksAtFace(part, setting.mirrored);
  const behindOf = (depth: number): number => (depth - (picture.planeDepth ?? 0)) * (atFace ? 1 : -1) * mmIn(units);
  const behind = forPlace(over, part, place).behindMm;
  const set = (depth: number | undefined): void => {
    const name = depthName(place.list, holderAt(part, place)?.id ?? '');
    const { [name]: _, ...others } = picture.tracedDepths ?? {};
    const tracedDepths = depth === undefined ? others : { ...others, [name]: depth };
    const changes: Partial<PictureFile> = {
      tracedDepths: Object.keys(tracedDepths).length === 0 ? undefined : tracedDepths,
    };
    edit((job) => withPictureChanged(job, picture.id, changes));
  };
  if (camera === null) return <p class="hint">{words.depthNeedsCamera}</p>;
  return (
    <>
      <NumberField
        label={words.tracedDepth}
        figures={figures}
        value={tracedDepth(part, picture, place, atFace)}
        fits={(value) => camera.heightMm + behindOf(value) > 0}
        onSet={set}
        onClear={() => set(undefined)}
      />
      <p class="hint">{behind === 0 ? words.inPlane : words.shownFor(words.behind(behind, units))}</p>
    </>
  );
}

/** What a picture does for the outline that is chosen: puts it right for its depth, pulls it onto the picture's edges. */
export function PictureTools({ context, over, part, place, chosen }: Props & { readonly chosen: Selection }) {
  const [said, say] = useState('');
  const { job, file } = context.sheet;
  const { units } = part;
  const outline = circleOf(job, file, chosen) ?? (pointsOf(job, file, chosen) as LoopFile | null);
  const { toPicture, behindMm: behind } = forPlace(over, part, place);
  const { camera } = over;
  const mm = mmIn(units);
  if (outline === null) return null;
  // what was changed meanwhile is not written over
  const put = (next: LoopFile): void =>
    context.edit((now) => {
      if ((circleOf(now, file, chosen) ?? pointsOf(now, file, chosen)) !== outline) return now;
      return 'circle' in next ? withCircle(now, file, chosen, next) : withPoints(now, file, chosen, next);
    });
  const shift = camera === null || behind === 0 ? 0 : largestShift(outline, camera, behind, mm);
  const pull = async (): Promise<void> => {
    say(words.pulling);
    const closed = chosen.kind === 'loop';
    const pulled = await over.pull({ picture: over.loaded.blob, toPicture, outline, closed, mm });
    if (pulled === null || pulled.found === 0) return say(words.notPulled);
    put(pulled.outline);
    say(words.pulled(fineLength(pulled.moved * mm, units), pulled.found, pulled.of));
  };
  return (
    <fieldset class="over-tools" aria-label={words.over}>
      <div class="row">
        <button type="button" onClick={pull}>
          {words.pull}
        </button>
        {camera !== null && shift > 0 && (
          <button
            type="button"
            onClick={() => {
              put(atDepth(outline, camera, behind, mm));
              say(words.putRightDone(fineLength(shift, units)));
            }}
          >
            {words.putRight(fineLength(shift, units))}
          </button>
        )}
      </div>
      {(place.list === 'sections' || place.list === 'hollows') && (
        <PlaceError
          context={context}
          over={over}
          part={part}
          list={place.list}
          index={place.index}
          doubtMm={shift * (camera?.relativeError ?? 0)}
        />
      )}
      <p class="said" role="status">
        {said}
      </p>
    </fieldset>
  );
}

interface ErrorProps extends Omit<Props, 'place'> {
  readonly list: 'sections' | 'hollows';
  readonly index: number;
  /** How far an outline may lie wrong because it is not known better how far the camera was, mm. */
  readonly doubtMm: number;
}

/** What a section or hollow is good to that is traced over the picture, its depth allowed for; it can be told so. */
function PlaceError({ context, over, part, list, index, doubtMm }: ErrorProps) {
  const { units, traceError } = part;
  const error = over.error === null ? null : errorIn(units, over.error * mmIn(units) + doubtMm);
  const isSaid = error === null || (part[list]?.[index]?.traceError ?? traceError ?? 0) >= error;
  const write = (traced: number): void =>
    context.edit((job) =>
      withPart(job, context.sheet.file, (old) => withDetails(old, { list, index }, { traceError: traced })),
    );
  return (
    <>
      {doubtMm >= 0.01 && <p class="hint">{words.depthAdds(fineLength(doubtMm, units))}</p>}
      {!isSaid && (
        <button type="button" onClick={() => write(error)}>
          {words.placeError[list](stated(error, units))}
        </button>
      )}
    </>
  );
}

const inMm = ([x, y]: XY, mm: number) => ({ x: x * mm, y: y * mm });

function largestShift(outline: LoopFile, camera: CameraPosition, behind: number, mm: number): number {
  const places = 'circle' in outline ? [outline.circle] : outline.map(xyOf);
  const beyond = 'circle' in outline ? (outline.radius * mm * Math.abs(behind)) / camera.heightMm : 0;
  return Math.max(...places.map((place) => shiftAtDepthMm(camera, inMm(place, mm), behind))) + beyond;
}

/** An outline that was traced in the plane of the points, where it truly is: larger by the same everywhere. */
function atDepth(outline: LoopFile, camera: CameraPosition, behind: number, mm: number): LoopFile {
  const moved = (place: XY): XY => {
    const outcome = trueAtDepth(camera, inMm(place, mm), behind);
    return outcome.ok ? [outcome.value.x / mm, outcome.value.y / mm] : place;
  };
  if (!('circle' in outline)) return outline.map((vertex) => vertexAt(moved(xyOf(vertex)), vertex[2]));
  const radius = (outline.radius * (camera.heightMm + behind)) / camera.heightMm;
  return { circle: [...moved(outline.circle)], radius };
}
