import { type Box, boxAround, boxesMeet, boxOfEdge } from '../../geometry/plane/edge-box.ts';
import { angleOf, distance, polar, sub, vec } from '../../geometry/plane/vec.ts';
import { lengthText } from '../../job/length-text.ts';
import { boxOfPoint, grown, overlap } from '../scene/frame.ts';
import { boxOfMark, boxOfText, circle, gathered, layer, outline, run, text } from '../scene/marks.ts';
import type { Layer, Mark, TextMark, View } from '../scene/scene.ts';
import type { Sizes } from '../scene/sizes.ts';
import { wrapText } from '../scene/text-size.ts';
import { type ClosestPlace, closestPlaceLayers, movingAtMoment } from './closest-place.ts';
import { bandsOf, type DrawInput } from './draw-input.ts';
import { runsOf } from './hidden-edges.ts';
import type { PlaceToSee } from './places-to-see.ts';

/** The enlargements of ISO 5455 (from memory), and true scale. */
export const scales = [1, 2, 5, 10, 20, 50];

/** The largest usual scale at which a place fits a circle of so many mm on the sheet. */
export const scaleFor = (placeRadiusMm: number, radiusOnSheetMm: number): number =>
  scales.findLast((scale) => placeRadiusMm * scale <= radiusOnSheetMm) ?? 1;

export interface Detail {
  readonly letter: string;
  readonly place: PlaceToSee;
  readonly scale: number;
  /** The circle shown, in the joint frame's mm. */
  readonly radiusMm: number;
}

export const detailOf = (place: PlaceToSee, index: number, radiusOnSheetMm: number): Detail => {
  const scale = scaleFor(place.radiusMm, radiusOnSheetMm);
  return { letter: String.fromCharCode(65 + index), place, scale, radiusMm: radiusOnSheetMm / scale };
};

const samePlaceMm = 0.05;

interface Surroundings {
  readonly input: DrawInput;
  readonly plane: readonly Layer[];
  readonly closestPlaces: readonly ClosestPlace[];
  readonly sizes: Sizes;
}

/**
 * A place seen larger, in the joint frame, cut off by its circle: what the whole drawing shows there, and besides the
 * first and last line and the moving part where it comes closest; what there is to say of it stands beneath.
 */
export function detailView(detail: Detail, { input, plane, closestPlaces, sizes }: Surroundings): View {
  const { letter, place, scale, radiusMm } = detail;
  const { centre } = place;
  const within = grown(boxOfPoint(centre), radiusMm);
  const near = closestPlaces.filter(({ middle }) => distance(middle, centre) < radiusMm);
  const bands = bandsOf(input.plan);
  const moments = near.flatMap(({ moment }) => (moment === null ? [] : movingAtMoment(input.joint, moment)));
  const shown = [
    ...plane,
    layer('on-the-way', moments.map(outline)),
    layer(
      'first-line',
      bands.map(({ first }) => outline(first)),
    ),
    layer(
      'last-line',
      bands.map(({ last }) => outline(last)),
    ),
    ...closestPlaceLayers(near, (0.7 * sizes.textMm) / scale),
  ];
  const caption = captionOf(detail, near, sizes);
  const layers = [
    ...shown.map(({ role, marks }) =>
      layer(
        role,
        marks.flatMap((mark) => prune(mark, within)),
      ),
    ),
    layer('detail-ring', [circle(centre, radiusMm)]),
    layer('text', [...caption, ...gapFigures(near, input, sizes, scale)]),
  ];
  const frame = boxAround([within, ...caption.map((mark) => boxOfText(mark, scale))]);
  return {
    id: `detail-${letter.toLowerCase()}`,
    at: vec(0, 0),
    scale,
    frame,
    clip: { centre, radiusMm },
    layers: gathered(layers),
  };
}

/** The part of a mark worth keeping near a place: open runs are shortened, closed marks kept or left out whole. */
function prune(mark: Mark, within: Box): Mark[] {
  if (mark.kind !== 'run') return boxesMeet(boxOfMark(mark), within, 0) ? [mark] : [];
  return runsOf(mark.edges.filter((edge) => boxesMeet(boxOfEdge(edge), within, 0))).map(run);
}

function captionOf(
  { letter, place, scale, radiusMm }: Detail,
  near: readonly ClosestPlace[],
  { textMm, headingMm }: Sizes,
): TextMark[] {
  const left = place.centre.x - radiusMm;
  const widthMm = 2 * radiusMm * scale;
  const notes = [...place.notes, ...near.map(({ title, detail }) => (detail === null ? title : `${title}, ${detail}`))];
  const rows = notes.flatMap((note) => wrapText(note, textMm, widthMm));
  const firstY = place.centre.y - radiusMm - (1.5 * headingMm) / scale;
  return [
    text(vec(left, firstY), `${letter}   ${scale} : 1`, headingMm, { bold: true }),
    ...rows.map((row, i) => text(vec(left, firstY - ((1.35 + 1.25 * i) * textMm) / scale), row, textMm)),
  ];
}

/** The width of each gap beside its middle, square to it, where that is free; the caption has it in any case. */
function gapFigures(near: readonly ClosestPlace[], { joint }: DrawInput, { textMm }: Sizes, scale: number): TextMark[] {
  const figures: TextMark[] = [];
  for (const { fixedAt, movingAt, middle } of near.filter(isNewGap)) {
    const along = angleOf(sub(movingAt, fixedAt));
    const words = lengthText(distance(fixedAt, movingAt), joint.fit.units);
    const sides = [along - Math.PI / 2, along + Math.PI / 2].map((angle) => {
      const at = polar(middle, (0.7 * textMm) / scale, angle);
      const anchor = Math.cos(angle) > 0.4 ? 'start' : Math.cos(angle) < -0.4 ? 'end' : 'middle';
      return text(vec(at.x, at.y - (0.35 * textMm) / scale), words, textMm, { bold: true, anchor });
    });
    const free = sides.find(
      (side) => !figures.some((other) => overlap(boxOfText(other, scale), boxOfText(side, scale))),
    );
    if (free !== undefined) figures.push(free);
  }
  return figures;
}

/** A gap that is open and not the same as one before it: a straight way in is often closest where it ends. */
function isNewGap({ fixedAt, movingAt, touches }: ClosestPlace, i: number, all: readonly ClosestPlace[]): boolean {
  const isSame = (other: ClosestPlace): boolean =>
    distance(other.fixedAt, fixedAt) < samePlaceMm && distance(other.movingAt, movingAt) < samePlaceMm;
  return !touches && distance(fixedAt, movingAt) > 0 && !all.slice(0, i).some(isSame);
}
