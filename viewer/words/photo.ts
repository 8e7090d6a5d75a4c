import type { PhotoFault, PhotoSide } from '../../src/intake/photo/photo-fault.ts';
import { fineLength, lengthText } from '../../src/job/length-text.ts';
import type { Units } from '../../src/job/lengths.ts';
import { turnText } from '../../src/words/units.ts';
import type { CameraPosition, Lean } from '../heavy/set-straight.ts';

/** A ± limit is never rounded to less than it is: to a hundredth of a millimetre, a thousandth of an inch. */
export function errorIn(units: Units, mm: number): number {
  const finest = units === 'mm' ? 100 : 1000;
  return Math.ceil((mm / (units === 'mm' ? 1 : 25.4)) * finest - 1e-6) / finest;
}

/** As far off as a camera is known to be. */
const roughly = (mm: number, units: Units): string =>
  units === 'mm' ? `${Math.round(mm / 10) * 10} mm` : `${Math.round(mm / 25.4)} in`;

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

const megabytes = (bytes: number): string => `${Math.ceil(bytes / 1e5) / 10} MB`;

const sideOf = (where: PhotoSide): string => (where === 'picture' ? 'in the picture' : 'by the places given');

/** Every word of the pictures of a part. */
export const photoWords = {
  pictures: 'Pictures',
  add: 'Add a picture of its face',
  take: 'Take a picture',
  invitation:
    'A photograph to trace over. Stand back and zoom in; touch four or more places in it that you have measured.',
  notSetYet: 'not set straight yet',
  setBy: (points: number): string => `set straight by ${points} points`,
  inDoubt: 'its points do not agree',
  goodTo: (error: string): string => `good to ± ${error}`,
  show: 'Show it beneath',
  strength: 'How strong it shows',
  loading: 'Opening the picture …',
  broken: 'This browser cannot show the picture. Save it as JPEG and add it again.',

  notAPicture: (name: string): string =>
    `${name} is no JPEG, PNG or WebP picture: it was not added. Save it as JPEG and add that.`,
  unreadable: (name: string): string =>
    `${name} cannot be opened as a picture: it is damaged, or not what its name says.`,
  tooLarge: (name: string, bytes: number, left: number, most: number): string =>
    `${name} has ${megabytes(bytes)}: it was not added. The pictures of a job may have ${megabytes(most)} together, and ${megabytes(Math.max(0, left))} are left. Save it smaller, 3000 to 4000 pixels wide.`,

  heading: (name: string): string => `Set straight: ${name}`,
  taken: 'How it was taken',
  methods: { points: 'from anywhere: four points or more', 'square-on': 'square-on: two points' },
  next: 'What is tapped in the picture next',
  typedPlace: 'a place by x and y',
  holeAt: (id: string, kind: string, touched: boolean): string =>
    `${id}, ${kind === 'tapped' ? 'tapped hole' : kind}${touched ? ' (done)' : ''}`,
  tapHint: (what: string): string =>
    `Tap ${what} in the picture, then drag it to set it finely: a lens opens under the finger.`,
  theSpot: 'that place',
  keyHint: 'Arrow keys move the chosen point by a pixel, with Shift by ten; + and − bring the picture nearer.',
  placeWanted: 'Say first where it is: x and y in the drawing of the part.',
  firstIsOrigin: 'The first point becomes the origin of the drawing, the second lies on its x axis.',
  distanceWanted: 'Say first how far it is from the first point.',
  enoughForSquareOn: 'Two points are all a square-on picture takes. Remove one to touch another.',
  putInMiddle: 'Put it in the middle of the view',
  touches: 'Points touched',
  point: 'Point',
  off: 'Off',
  worst: 'worst',
  doubtful: 'does not fit',
  offHint: 'Off: how far from its place the other points put it.',
  placed: (n: number): string => `place ${n}`,
  choose: (name: string): string => `Choose ${name}`,
  remove: (name: string): string => `Remove ${name}`,
  distance: 'Distance between the two',
  howWell: 'How well it is known',
  touchError: 'Touched to ±, pixels',
  knownError: 'Places known to ±',
  cameraAway: 'Camera to face, if measured',
  planeDepth: 'Points lie at, from face',
  done: 'Done: trace over it',
  removePicture: 'Remove the picture',

  moreWanted: (more: number): string => `${more === 1 ? 'One more point is' : `${more} more points are`} wanted.`,
  good: (error: string): string => `What is traced over it is good to ± ${error}, 95 times in a hundred.`,
  nothingToSpare: 'Four points leave nothing to check them by: two or four more would show a mistake.',
  oneToSpare: 'Five points show that something is wrong, but not which. One more tells.',
  scatter: 'The points scatter by more than was said; the figure takes what they show.',
  disagree: (suspects: readonly string[]): string =>
    suspects.length === 0
      ? 'The points do not agree: a place is wrong, or another hole was touched.'
      : `The points do not agree. Without ${suspects.length === 1 ? suspects[0] : `one of ${listed(suspects)}`} the rest do: is its place right, and was that hole touched?`,
  mirrored:
    'Mirrored: the picture shows the part from the other side than its drawing does. Take it from the side the part is drawn from, say under “How did you see it?” from where that is, or look for two places that are swapped.',
  squareOnBlind: (lean: Lean, units: Units): string => {
    const unseen = 'Two points cannot show whether the camera leaned.';
    if (lean.oneDegreeMm === null || lean.twoDegreesMm === null)
      return `${unseen} Say how far it was from the face to learn what that may cost; till then no error is stated.`;
    return `${unseen} ${lengthText(lean.reachMm, units)} from the middle, one degree puts it ${fineLength(lean.oneDegreeMm, units)} wrong, two degrees ${fineLength(lean.twoDegreesMm, units)}; two are reckoned with.`;
  },
  camera: ({ heightMm, relativeError, by, tiltRad }: CameraPosition, units: Units): string => {
    const from = { points: 'found from the points', focal: 'from the focal length in the file', height: 'as measured' };
    const share = relativeError === null ? '' : ` ± ${Math.ceil(relativeError * 100)} %`;
    return `The camera stood ${roughly(heightMm, units)}${share} off the face, ${from[by]}, ${turnText(tiltRad)} off square.`;
  },
  noCamera: 'How far the camera was is not known',

  errorAsked: (name: string, now: string, then: string): string =>
    `${name} is said to be traced to ± ${now}. Say ± ${then} instead, from the picture?`,
  writeError: (error: string): string => `Say ± ${error}`,
  keepError: (error: string): string => `Leave ± ${error}`,
  errorWritten: (error: string): string => `Written: traceError ${error}, from the picture.`,
  noErrorWritten: 'The points do not agree: no tracing error was written.',

  over: 'Over the picture',
  tracedDepth: 'What you trace lies at, from face',
  shownFor: (behind: string): string => `The picture is shown for ${behind}.`,
  behind: (mm: number, units: Units): string =>
    `${lengthText(Math.abs(mm), units)} ${mm < 0 ? 'before' : 'behind'} the touched points`,
  inPlane: 'Right for the plane of the touched points only.',
  putRight: (mm: string): string => `It was traced in the plane of the points: put it right (moves up to ${mm})`,
  putRightDone: (mm: string): string => `Put right for its depth: moved up to ${mm}.`,
  depthAdds: (mm: string): string =>
    `How far the camera was is not known better: at its depth this outline is ± ${mm} less sure than the picture’s own figure.`,
  placeError: {
    sections: (error: string): string => `Traced over this picture: say ± ${error} for the section`,
    hollows: (error: string): string => `Traced over this picture: say ± ${error} for the hollow`,
  },
  depthNeedsCamera:
    'What lies at another depth can be put right once the camera’s distance is known: set the picture straight and say it.',
  pull: 'Pull it onto the picture’s edges',
  pulling: 'Looking for its edges …',
  pulled: (moved: string, found: number, of: number): string =>
    found === of
      ? `On the picture’s edges: moved up to ${moved}.`
      : `Moved up to ${moved}: ${found} of ${of} edges were found in the picture, the others stay.`,
  notPulled: 'No edge of it stands out in the picture: nothing was moved.',
} as const;

/** Why a picture cannot be set straight, in one sentence; `names` are the points' own. */
export function faultText(fault: PhotoFault, names: readonly string[], units: Units): string {
  const named = (points: readonly number[]): string => listed(points.map((i) => names[i] ?? String(i + 1)));
  switch (fault.code) {
    case 'not-a-jpeg':
      return 'The file is no JPEG.';
    case 'no-picture-size':
      return 'The file ends before it says how large the picture is.';
    case 'too-few-points':
      return fault.found < fault.needed
        ? photoWords.moreWanted(fault.needed - fault.found)
        : `${fault.found} points are touched; a square-on picture takes ${fault.needed}. Remove some, or say it was taken from anywhere.`;
    case 'not-a-number':
      return `The place of ${named([fault.point])} is no number.`;
    case 'coincident':
      return `${named(fault.points)} are one place ${sideOf(fault.where)}.`;
    case 'in-a-line':
      return `${named(fault.points)} lie in one line ${sideOf(fault.where)}: touch one well beside it.`;
    case 'behind-camera':
      return `No camera sees the points so: two are swapped, or one is far out${fault.suspects.length === 0 ? '' : `; look at ${named(fault.suspects)}`}.`;
    case 'undetermined':
      return 'These points do not fix how the picture lies: touch others, further apart.';
    case 'out-of-range':
      return `${outOfRange[fault.what] ?? fault.what} cannot be ${fault.found}.`;
    case 'too-square-on':
      return `${photoWords.noCamera}: the face was seen too nearly square-on to tell. Measured from lens to face it can be used.`;
    case 'no-such-height':
      return `No camera ${lengthText(fault.heightMm, units)} off the face sees the points so: measure it again.`;
    case 'beyond-camera':
      return `A depth of ${lengthText(fault.depthMm, units)} is at the camera or beyond it: that stood ${roughly(fault.heightMm, units)} off.`;
  }
}

const outOfRange: Readonly<Record<string, string>> = {
  touchErrorPx: 'How well points are touched',
  knownErrorMm: 'How well places are known',
  heightMm: 'The distance of the camera',
  focal35Mm: 'The focal length in the file',
};
