// The house's arrows. Each room names the rooms it may import, itself always among them; anything else is an error.

const base = ['trade', 'geometry', 'geometry/plane', 'geometry/polygons', 'geometry/motion', 'geometry/cutting'];
const files = [...base, 'files'];
const job = [...files, 'job'];
const joint = [...job, 'joint'];
const clearance = [...joint, 'clearance'];
const plan = [...clearance, 'plan'];
const ways = [...plan, 'ways'];
const room = [...clearance, 'room'];
const compare = [...clearance, 'compare'];
const markout = [...plan, 'markout'];
const drill = [...markout, 'drill'];
const trial = [...markout, 'trial'];
const pipeline = [...trial, 'ways', 'drill', 'pipeline'];
const words = [...trial, 'drill', 'ways', 'room', 'compare', 'holes', 'holes/patterns', 'bore', 'stack', 'words'];
const drawing = [...words, 'drawing'];

const rooms = {
  geometry: ['geometry'],
  'geometry/plane': ['geometry/plane'],
  'geometry/polygons': ['geometry/plane', 'geometry/polygons'],
  'geometry/motion': ['geometry/plane', 'geometry/polygons', 'geometry/motion'],
  'geometry/cutting': ['geometry', 'geometry/plane', 'geometry/polygons', 'geometry/motion', 'geometry/cutting'],
  'geometry/library': ['geometry/plane', 'geometry/polygons', 'geometry/motion', 'geometry/library'],
  trade: ['trade'],
  holes: ['trade', 'holes'],
  'holes/patterns': ['trade', 'geometry/plane', 'holes/patterns'],
  bore: ['trade', 'geometry/plane', 'bore'],
  stack: [...job, 'stack'],
  typed: ['trade', 'files', 'holes', 'bore', 'typed'],
  files,
  job,
  intake: [...job, 'intake'],
  joint,
  clearance,
  plan,
  ways,
  room,
  compare,
  markout,
  drill,
  trial,
  pipeline,
  words,
  answers: [...words, 'answers'],
  drawing,
};

/** The libraries each room may use; the command line and the tests may use any. */
const libraries = {
  'geometry/plane': ['@flatten-js/core', 'robust-predicates'],
  'geometry/polygons': ['clipper2-ts', 'robust-predicates'],
  'geometry/motion': ['robust-predicates'],
  'geometry/cutting': [],
  'geometry/library': [],
  trade: [],
  holes: [],
  'holes/patterns': [],
  bore: ['ml-matrix'],
  stack: [],
  typed: [],
  files: ['zod'],
  job: [],
  answers: ['zod'],
  intake: ['@xmldom/xmldom', 'ml-matrix', 'papaparse', 'svgpath', 'zod'],
  joint: [],
  clearance: [],
  plan: [],
  ways: [],
  room: [],
  drill: [],
  compare: [],
  markout: [],
  trial: ['ml-matrix'],
  pipeline: [],
  words: [],
  drawing: ['pdf-lib'],
};

/** Rooms with rooms within them; their own files are only those beside these. */
const withInnerRooms = ['geometry', 'holes'];
const filesOf = (room) => (withInnerRooms.includes(room) ? `^src/${room}/[^/]+$` : `^src/${room}/`);
const anyOf = (names) => names.map((name) => name.replaceAll('/', '\\/').replaceAll('.', '\\.')).join('|');
const ours = '^(src|cli|viewer|tests)/';

/** What of the viewer runs in its worker, and what its page may run of the rooms that compute: colours and line widths. */
const ofTheWorker = '^viewer/(core\\.worker\\.ts$|heavy/)';
// styles, how wide a text is, what check bars may read, vectors, and the map of a single point from a picture and back
const harmlessToThePage =
  '^src/(drawing/(scene/(styles|check-bars|text-size)|svg/svg-paint)|geometry/plane/vec|intake/photo/(homography|at-depth|touch-noise))\\.ts$';

const arrows = Object.entries(rooms).map(([room, allowed]) => ({
  name: `arrows-of-${room.replace('/', '-')}`,
  comment: `${room} may import only: ${allowed.join(', ')}`,
  severity: 'error',
  from: { path: filesOf(room) },
  to: { path: ours, pathNot: allowed.map(filesOf) },
}));

const librariesOf = Object.entries(libraries).map(([room, allowed]) => ({
  name: `libraries-of-${room.replace('/', '-')}`,
  comment: allowed.length ? `${room} may use only: ${allowed.join(', ')}` : `${room} uses no library`,
  severity: 'error',
  from: { path: filesOf(room) },
  to: { path: 'node_modules/', pathNot: allowed.length ? `node_modules/(${anyOf(allowed)})/` : '^$' },
}));

module.exports = {
  forbidden: [
    ...arrows,
    ...librariesOf,
    {
      name: 'library-is-for-others',
      comment: 'what the package offers is put together by its entries, and nothing in the house imports it',
      severity: 'error',
      from: { path: '^(src|cli|viewer)/', pathNot: '^src/(geometry/library/|motion-library\\.ts$)' },
      to: { path: '^src/(geometry/library/|library\\.ts$|motion-library\\.ts$)' },
    },
    {
      name: 'words-take-types-only',
      comment:
        'words turns results into text and computes none of them: it takes only their types, and how a length is written',
      severity: 'error',
      from: { path: '^src/words/' },
      to: {
        path: '^src/(files|job|joint|clearance|plan|ways|room|compare|markout|drill|trial|holes|bore|stack|typed|answers)/',
        pathNot: '^src/job/length-text\\.ts$',
        dependencyTypesNot: ['type-only'],
      },
    },
    {
      name: 'arrows-of-cli',
      comment: 'the command line and the viewer do not know each other, and nobody imports a test',
      severity: 'error',
      from: { path: '^cli/' },
      to: { path: '^(viewer|tests)/' },
    },
    {
      name: 'arrows-of-viewer',
      comment: 'the viewer and the command line do not know each other, and nobody imports a test',
      severity: 'error',
      from: { path: '^viewer/' },
      to: { path: '^(cli|tests)/' },
    },
    {
      name: 'main-thread-reads-nothing',
      comment: 'files may be large: their schemas are held against them by the worker',
      severity: 'error',
      from: { path: '^viewer/', pathNot: ofTheWorker },
      to: { path: '^src/(files/(part|fit|job|trial|stack)-file|job/read-)', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'main-thread-computes-nothing',
      comment: "the page's own thread draws: of what computes it takes only types, and leaves the rest to its worker",
      severity: 'error',
      from: { path: '^viewer/', pathNot: ofTheWorker },
      to: {
        path: '^(src/(geometry|intake|joint|clearance|plan|ways|room|compare|markout|drill|trial|holes|bore|stack|typed|pipeline|drawing)|viewer/heavy)/',
        pathNot: harmlessToThePage,
        dependencyTypesNot: ['type-only'],
      },
    },
    {
      name: 'node-only-in-cli',
      comment: 'the rooms run in Node and in the browser alike',
      severity: 'error',
      from: { path: '^(src|viewer)/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'paint-only-in-viewer',
      comment: 'only the viewer touches the DOM',
      severity: 'error',
      from: { path: '^(src|cli)/' },
      to: { path: 'node_modules/(@svgdotjs|comlink|idb-keyval)/' },
    },
    {
      name: 'terminal-only-in-cli',
      severity: 'error',
      from: { path: '^(src|viewer)/' },
      to: { path: 'node_modules/(commander|picocolors|cli-table3|sirv)/' },
    },
    {
      name: 'one-polygon-engine',
      comment: 'one adapter alone knows the polygon engine',
      severity: 'error',
      from: { path: '^(src|cli|viewer)/', pathNot: '^src/geometry/polygons/polygon-engine\\.ts$' },
      to: { path: 'node_modules/clipper2-ts/' },
    },
    {
      name: 'no-circle',
      severity: 'error',
      from: { path: ours },
      to: { circular: true },
    },
    {
      name: 'no-unresolvable',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: 'no-undeclared-library',
      comment: 'what is imported is in package.json, and what ships is no development library',
      severity: 'error',
      from: { path: '^(src|cli|viewer)/' },
      to: { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'], dependencyTypesNot: ['npm', 'type-only'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.base.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'node', 'default'] },
  },
};
