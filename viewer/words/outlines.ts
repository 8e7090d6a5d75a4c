import { mmIn } from '../../src/words/units.ts';

const plural = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** Every word of the step in which outlines are traced. */
export const outlineWords = {
  heading: 'Outlines',
  whichPart: 'Which part',
  tracedSoFar: (name: string, outlines: number): string =>
    `${name}: ${outlines === 0 ? 'nothing traced yet' : plural(outlines, 'outline')}`,
  sideNotSaid: 'side not said',
  runsOpen: (count: number): string => `${plural(count, 'line')} not closed`,

  about: 'About this part',
  name: 'Name',
  units: 'Lengths in',
  unitNames: { mm: 'mm', in: 'inch' },
  material: 'Material',
  materialNames: [
    ['', 'not said'],
    ['grey-iron', 'grey iron'],
    ['ductile-iron', 'ductile iron'],
    ['aluminium', 'aluminium'],
    ['steel', 'steel'],
  ],
  viewedFrom: 'How did you see it?',
  viewedFromFace: 'I looked at its mating face',
  viewedFromBack: 'I looked through it from behind',
  viewedFromAsked: 'Say this before anything is checked: seen from the wrong side, it comes out mirrored.',

  places: 'What is traced',
  nothingYet: 'Nothing traced yet. Add a section: the outlines that hold over one range of depth.',
  through: 'at every depth',
  depths: (from: number, to: number): string => `${from} to ${to} from face`,
  mayBeCut: 'may be cut',
  hollow: 'hollow',
  notToCut: 'do not cut',
  notClosed: 'not closed',
  addSection: 'Add a section',
  newSection: 'section',
  from: 'From',
  to: 'to, from face',
  depthWanted: 'Two numbers, the first the smaller; both empty for every depth.',
  nameTaken: 'Another has that name.',
  mayCut: 'May be cut',
  gotBy: 'How it was got',
  methods: ['feature list', 'rubbing', 'card', 'gasket', 'caliper', 'scribing block', 'contour gauge', 'photo', 'scan'],
  traceError: 'Good to ±',
  keepWall: 'Wall to keep',
  removePlace: (name: string): string => `Remove ${name} and its outlines`,
  outlines: 'Its outlines',
  details: 'Depth, name, how it was got',
  outline: (n: number, points: number | null): string =>
    points === null ? `${n}: a circle` : `${n}: ${plural(points, 'point')}`,
  openRun: (points: number): string => `not closed: ${plural(points, 'point')}`,

  trace: 'Trace an outline',
  traceHint: 'Tap along the edge. Tap the first point to close it, or close it behind. Drag a point to set it finely.',
  traceGoesOn: 'Go on tracing',
  arc: 'Arc: next two taps',
  arcHint: 'Tap a point on the arc, then its end.',
  circle: 'Circle by three points',
  circleHint: (left: number): string =>
    `Tap ${plural(left, 'more point')} of the edge.`.replace('points of', 'points of'),
  inLine: 'Those three are in a line, or two of them are the same: no circle goes through them.',
  stop: 'Done',
  features: 'Add from measures',

  chosenLoop: (place: string, n: number): string => `${place}, outline ${n}`,
  chosenRun: 'Line not closed',
  point: 'Point',
  bulge: 'bulge',
  choosePoint: (n: number): string => `Point ${n}`,
  removePoint: (n: number): string => `Remove point ${n}`,
  addPoint: 'Add point',
  straighten: 'Straighten the edge after it',
  removeOutline: 'Remove outline',
  makeMetal: 'Make it a section',
  makeHollow: 'It is a hollow',
  makeNotToCut: 'Not to be cut',
  keyHint: 'Arrow keys move the chosen point a little, with Shift ten times as far; Delete removes it.',
  close: 'Close it',
  closesNothing: 'Three points, or two with an arc, make an outline.',
  metalOtherSide: 'Metal is on the other side',
  metalOn: (side: 'left' | 'right'): string => `Metal on the ${side}, going along it`,
  behind: 'Metal goes on behind for',
  closeBehind: 'Close it behind',
  tooTight: 'The line turns too tightly, or an edge is too short, for so much metal behind it.',
  centreX: 'Centre x',
  centreY: 'y',
  diameter: 'Diameter',

  holes: (count: number): string => `holes · ${count}`,
  addHole: 'Add a hole',
  addHoleHint: 'Tap where its centre is.',
  tapHole: 'Tap it on the drawing',
  holeLine: (id: string, kind: string, size: string): string => [id, kind, ...(size === '' ? [] : [size])].join(' · '),
  round: (diameter: string): string => `Ø${diameter}`,
  holeName: 'Name',
  holeKind: 'Kind',
  holeKinds: { dowel: 'dowel', bolt: 'bolt', tapped: 'tapped', stud: 'stud', bore: 'bore', planned: 'planned' },
  thread: 'Thread',
  proud: 'Proud',
  removeHole: (id: string): string => `Remove ${id}`,

  walls: (count: number): string => `wall readings · ${count}`,
  wallDepth: 'Depth',
  wall: 'Wall',
  wallError: '±',
  wallLine: (wall: string, error: string | null, units: string): string =>
    `${wall} ${error === null ? '' : `± ${error} `}${units}`,
  wallPlace: (x: string, y: string, depth: string): string => `at ${x}, ${y}, ${depth} from face`,
  addWall: 'Add a reading',
  removeWall: (n: number): string => `Remove reading ${n}`,

  feature: 'Feature',
  featureKinds: { rib: 'rib', boss: 'boss', pad: 'pad', hole: 'hole' },
  endX: 'end x',
  endY: 'end y',
  width: 'width',
  height: 'height',
  angle: 'angle °',
  endRadius: 'end radius',
  add: 'Add',
  noFeature: 'Sizes over 0, and an end radius of at most half of them.',
  numberWanted: 'A figure is missing, or is no number.',
} as const;

/** A coordinate as it stands in the table: to a micron or four places of an inch, no more than was set. */
export const coordinate = (value: number, units: 'mm' | 'in'): string =>
  String(Number(value.toFixed(units === 'mm' ? 3 : 4)) + 0);

/** How far an arrow key moves a point, in a part's units: a tenth of a millimetre. */
export const nudge = (units: 'mm' | 'in'): number => (units === 'mm' ? 0.1 : 0.005);

/** A place tapped on the drawing, in mm, as a length in the part's units without digits nobody meant. */
export const tapped = (mm: number, units: 'mm' | 'in'): number =>
  Number((mm / mmIn(units)).toFixed(units === 'mm' ? 2 : 4));
