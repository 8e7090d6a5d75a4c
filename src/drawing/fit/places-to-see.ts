import { distance, type Vec } from '../../geometry/plane/vec.ts';
import type { Units } from '../../job/lengths.ts';
import { middleOf } from '../scene/frame.ts';
import type { ClosestPlace } from './closest-place.ts';
import { sizeOf, type WorkPlace, workText } from './work-places.ts';

/** A place too small to read on the whole drawing, and what is to be said of it. */
export interface PlaceToSee {
  readonly centre: Vec;
  readonly radiusMm: number;
  readonly notes: readonly string[];
  /** What comes off or is in the way there; null where it is only close. */
  readonly work: WorkPlace | null;
}

const mostPlaces = 4;
/** How far round a place a detail view reaches, mm: enough to tell what it is part of. */
const marginMm = 5;
const leastRadiusMm = 9;

/** The places worth a detail view, weightiest first: each cut or, without a plan, each foul; then the closest places. */
export function placesToSee(
  works: readonly WorkPlace[],
  closestPlaces: readonly ClosestPlace[],
  units: Units,
): readonly PlaceToSee[] {
  const wanted = [...works.map((work) => workPlace(work, units)), ...closestPlaces.map(closest).reverse()];
  return wanted.reduce<PlaceToSee[]>(addPlace, []).slice(0, mostPlaces);
}

/** A closest place inside a place already shown needs no view of its own. */
function addPlace(places: PlaceToSee[], place: PlaceToSee): PlaceToSee[] {
  const shown = places.some((other) => distance(other.centre, place.centre) + leastRadiusMm / 2 <= other.radiusMm);
  return place.work === null && shown ? places : [...places, place];
}

const workPlace = (work: WorkPlace, units: Units): PlaceToSee => ({
  work,
  centre: middleOf(work.box),
  radiusMm: Math.max(leastRadiusMm, sizeOf(work.box) / 2 + marginMm),
  notes: work.works.map((one) => workText(one, units)),
});

const closest = ({ fixedAt, movingAt, middle }: ClosestPlace): PlaceToSee => ({
  work: null,
  centre: middle,
  radiusMm: Math.max(leastRadiusMm, distance(fixedAt, movingAt) / 2 + 2 * marginMm),
  notes: [],
});
