import { heightOf, widthOf } from '../scene/frame.ts';
import { boxOfLayers } from '../scene/marks.ts';
import type { Scene } from '../scene/scene.ts';
import { laidOut } from '../scene/sheet.ts';
import { sizesFor } from '../scene/sizes.ts';
import { acrossOf } from './across.ts';
import { closestPlacesOf } from './closest-place.ts';
import { detailOf, detailView, scaleFor } from './detail-view.ts';
import type { DrawInput } from './draw-input.ts';
import { faceView } from './face-view.ts';
import { placesToSee } from './places-to-see.ts';
import { planeLayers } from './plane-layers.ts';
import { sideView } from './side-view.ts';
import { workPlaces } from './work-places.ts';

/** Radius of a detail view on the sheet, in font sizes. */
const detailRadius = 10.5;

/**
 * A checked fit, and its cut plan where there is one, as one drawing at true scale: the joint seen from the face and
 * from the side, the places that matter enlarged, what every line means and what it all rests on.
 *
 * @param wordsMm - how wide its words may be where sheets are to be joined, so that no join cuts a line of them
 */
export function drawFit(input: DrawInput, wordsMm: number | null = null): Scene {
  const sizes = sizesFor(extentOf(input));
  const plane = planeLayers(input, sizes);
  const closestPlaces = closestPlacesOf(input.joint, input.check);
  const across = acrossOf(input);
  const works = workPlaces(input);
  const radiusOnSheetMm = detailRadius * sizes.textMm;
  // what cannot be drawn larger than it is needs no view of its own
  const details = placesToSee(works, closestPlaces, input.joint.fit.units)
    .filter(({ radiusMm }) => scaleFor(radiusMm, radiusOnSheetMm) > 1)
    .map((place, i) => detailOf(place, i, radiusOnSheetMm));
  const lettered = works.map((work) => ({
    work,
    letter: details.find(({ place }) => place.work === work)?.letter ?? null,
  }));
  return laidOut({
    input,
    across,
    sizes,
    wordsMm,
    face: faceView({ input, works, plane, details, closestPlaces, sizes }),
    side: sideView(input, lettered, across, sizes),
    details: details.map((detail) => detailView(detail, { input, plane, closestPlaces, sizes })),
  });
}

function extentOf({ joint, room }: DrawInput): number {
  const parts = [...joint.fixed.sections, ...joint.moving.sections].map(
    ({ loops }) => ({ kind: 'outline', loops }) as const,
  );
  const box = boxOfLayers([{ role: 'fixed', marks: [...parts, { kind: 'outline', loops: room }] }]);
  return Math.max(widthOf(box), heightOf(box));
}
