import { pointOnEdge } from '../../geometry/plane/edge.ts';
import type { Box } from '../../geometry/plane/edge-box.ts';
import { edgesOfRegion, type Region } from '../../geometry/plane/loop.ts';
import { length, polar, sub, type Vec, vec } from '../../geometry/plane/vec.ts';
import type { Casting, Hole } from '../../job/casting.ts';
import { lengthText } from '../../job/length-text.ts';
import { axisName } from '../../words/names.ts';
import { type Callout, placeCallouts } from '../scene/callouts.ts';
import { boxOfPoint, grown, overlap } from '../scene/frame.ts';
import { boxOfLayers, boxOfText, circle, cross, gathered, layer, text } from '../scene/marks.ts';
import type { Layer, Mark, TextMark, View } from '../scene/scene.ts';
import type { Sizes } from '../scene/sizes.ts';
import { fitText } from '../scene/text-size.ts';
import { type ClosestPlace, closestPlaceLayers } from './closest-place.ts';
import { briefDepth } from './depth-words.ts';
import type { Detail } from './detail-view.ts';
import { bandsOf, type DrawInput } from './draw-input.ts';
import { holeRadius } from './hole-symbols.ts';
import { namedSections } from './slices.ts';
import { type Work, type WorkPlace, workName } from './work-places.ts';

interface FaceParts {
  readonly input: DrawInput;
  readonly works: readonly WorkPlace[];
  readonly plane: readonly Layer[];
  readonly details: readonly Detail[];
  readonly closestPlaces: readonly ClosestPlace[];
  readonly sizes: Sizes;
}

/** The whole joint at true scale, looking at the fixed part's mating face, origin on the axis, with its labels. */
export function faceView({ input, works, plane, details, closestPlaces, sizes }: FaceParts): View {
  const { textMm } = sizes;
  const drawn = boxOfLayers(plane);
  const lettered = holeLabels(input, sizes);
  const callouts = placeCallouts(calloutsOf(input, works, details, closestPlaces), grown(drawn, 0.5 * textMm), sizes);
  const layers = [
    ...plane,
    layer('centre-line', axisCross(input, sizes)),
    ...closestPlaceLayers(closestPlaces, 0.9 * textMm),
    layer('text', lettered),
    layer(
      'detail-ring',
      details.map(({ place }) => circle(place.centre, place.radiusMm)),
    ),
    layer('text', detailLetters(details, lettered, sizes)),
    ...callouts.layers,
  ];
  return { id: 'face-view', at: vec(0, 0), scale: 1, frame: callouts.box, clip: null, layers: gathered(layers) };
}

/** The axis, unless a hole's own centre lines already stand on it. */
function axisCross({ joint }: DrawInput, { textMm }: Sizes): readonly Mark[] {
  return joint.fixed.holes.some(({ at }) => length(at) < 1e-3) ? [] : cross(vec(0, 0), 2.2 * textMm);
}

/** The letter of each detail outside its ring, away from the axis where nothing else stands there. */
function detailLetters(details: readonly Detail[], lettered: readonly TextMark[], { headingMm }: Sizes): TextMark[] {
  const rings = details.map(({ place }) => grown(boxOfPoint(place.centre), place.radiusMm));
  const taken = [...rings, ...lettered.map((mark) => boxOfText(mark))];
  return details.map(({ place, letter }) => {
    const { centre, radiusMm } = place;
    const outward = Math.atan2(centre.y, centre.x);
    const places = around(outward).map((angle) => {
      const at = polar(centre, radiusMm + 0.75 * headingMm, angle);
      return text(vec(at.x, at.y - 0.35 * headingMm), letter, headingMm, { anchor: 'middle', bold: true });
    });
    const chosen = firstFree(places, taken);
    taken.push(boxOfText(chosen));
    return chosen;
  });
}

/** Eight directions, the first first and those nearest to it next. */
const around = (first: number): number[] => [0, 1, -1, 2, -2, 3, -3, 4].map((eighth) => first + (eighth * Math.PI) / 4);

const firstFree = (places: readonly TextMark[], taken: readonly Box[]): TextMark =>
  places.find((place) => !taken.some((box) => overlap(box, boxOfText(place)))) ?? (places[0] as TextMark);

function calloutsOf(
  input: DrawInput,
  works: readonly WorkPlace[],
  details: readonly Detail[],
  closestPlaces: readonly ClosestPlace[],
): Callout[] {
  const { joint } = input;
  const { units } = joint.fit;
  const shown = (at: Vec): boolean => details.some(({ place }) => length(sub(place.centre, at)) < place.radiusMm);
  return [
    ...closestPlaces
      .filter(({ middle, touches }) => touches || !shown(middle))
      .map(({ middle, title, detail }): Callout => ({ anchors: [middle], title, detail, role: 'text' })),
    ...works
      .filter((work) => !details.some(({ place }) => place.work === work))
      .flatMap((work) => work.works.map((one) => workCallout(one))),
    ...partCallouts(joint.fixed, 'text', units),
    ...partCallouts(joint.moving, 'moving-text', units),
    ...joint.rotating.map(
      ({ name, sections }): Callout => ({
        anchors: sections.flatMap(({ loops }) => placesOn(loops)),
        title: name,
        detail: `turns with ${axisName(joint)}`,
        role: 'text',
      }),
    ),
  ];
}

const workCallout = ({ loops, words, ...work }: Work): Callout => ({
  anchors: placesOn(loops),
  title: workName(work),
  detail: words,
  role: 'text',
});

function partCallouts(part: Casting, role: Callout['role'], units: 'mm' | 'in'): Callout[] {
  const callout = (title: string, loops: Region, depth: Parameters<typeof briefDepth>[0]): Callout => ({
    anchors: placesOn(loops),
    title,
    detail: briefDepth(depth, units),
    role,
  });
  return [
    ...namedSections(part.sections).map(({ name, sections, depth }) => callout(name, sections[0].loops, depth)),
    ...part.hollows.map(({ id, loops, depth }) => callout(`${id} (hollow)`, loops, depth)),
    ...part.doNotCut.map(({ id, loops, depth }) => callout(`${id}: do not cut`, loops, depth)),
  ];
}

/** Enough places along an outline to choose from, however many edges it has. */
function placesOn(region: Region): Vec[] {
  const edges = edgesOfRegion(region);
  const step = Math.ceil(edges.length / 200);
  return edges
    .filter((_, i) => i % step === 0)
    .flatMap((edge) =>
      (edge.kind === 'line' ? [0.5] : [0.1, 0.25, 0.4, 0.5, 0.6, 0.75, 0.9]).map((t) => pointOnEdge(edge, t)),
    );
}

/** Widest name of a hole, in font sizes. */
const widestHoleName = 8;

/** The name of each fixed hole beside it, towards the axis where that is free. */
function holeLabels({ joint, plan }: DrawInput, sizes: Sizes): TextMark[] {
  const { textMm } = sizes;
  const { fixed, fit } = joint;
  const cutsMoving = bandsOf(plan).some(({ part }) => part === 'moving');
  const offset = new Map(joint.bolts.map((bolt) => [bolt.fixed, bolt]));
  const taken: Box[] = fixed.holes.map((hole) => grown(boxOfPoint(hole.at), holeRadius(hole, sizes) + 0.4 * textMm));
  return fixed.holes.map((hole) => {
    const bolt = offset.get(hole.id);
    const out = bolt?.linesUp === false ? `: ${lengthText(bolt.offsetMm, fit.units)} out` : '';
    const pair = [...fit.dowels, ...fit.bolts].find((pair) => pair.fixed.id === hole.id);
    const name = cutsMoving && pair !== undefined ? `${hole.id}/${pair.moving.id}` : hole.id;
    const label = freePlace(hole, fitText(name, textMm, widestHoleName * textMm) + out, taken, sizes);
    taken.push(boxOfText(label));
    return label;
  });
}

function freePlace(hole: Hole, words: string, taken: readonly Box[], sizes: Sizes): TextMark {
  const { textMm } = sizes;
  const reach = holeRadius(hole, sizes) + 0.55 * textMm;
  const inward = length(hole.at) < reach ? -Math.PI / 4 : Math.atan2(-hole.at.y, -hole.at.x);
  const places = around(inward).map((angle) => {
    const [across, up] = [Math.cos(angle), Math.sin(angle)];
    const anchor = across > 0.4 ? 'start' : across < -0.4 ? 'end' : 'middle';
    const y = hole.at.y + up * (reach + 0.4 * textMm) - 0.35 * textMm;
    return text(vec(hole.at.x + across * reach, y), words, textMm, { anchor });
  });
  return firstFree(places, taken);
}
