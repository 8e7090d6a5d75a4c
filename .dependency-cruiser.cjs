// The house's arrows. Each room names the rooms it may import, itself always among them; anything else is an error.

/** Below `joint` and upwards every room may use what its chain leads to. */
const base = ['trade', 'geometry', 'geometry/motion'];
const model = [...base, 'model'];
const joint = [...model, 'joint'];
const clearance = [...joint, 'clearance'];
const grind = [...clearance, 'grind'];
const goes = [...grind, 'goes'];
const words = [...goes, 'words'];
const drawing = [...words, 'drawing'];

const rooms = {
  geometry: ['geometry'],
  'geometry/motion': ['geometry', 'geometry/motion'],
  trade: ['trade'],
  model,
  intake: [...model, 'intake'],
  joint,
  clearance,
  grind,
  goes,
  words,
  drawing,
};

/** The libraries each room may use; the command line and the tests may use any. */
const libraries = {
  geometry: ['@flatten-js/core', 'clipper2-ts', 'robust-predicates'],
  'geometry/motion': ['robust-predicates'],
  trade: [],
  model: ['zod'],
  intake: ['@xmldom/xmldom', 'ml-matrix', 'papaparse', 'svgpath', 'zod'],
  joint: [],
  clearance: [],
  grind: [],
  goes: [],
  words: [],
  drawing: ['pdf-lib'],
};

/** Files of a room; `geometry` alone is without its inner room `geometry/motion`. */
const filesOf = (room) => (room === 'geometry' ? '^src/geometry/(?!motion/)' : `^src/${room}/`);
const anyOf = (names) => names.map((name) => name.replaceAll('/', '\\/').replaceAll('.', '\\.')).join('|');
const ours = '^(src|cli|viewer|tests)/';

/** What of the viewer runs in its worker, and what its page may run of the rooms that compute: colours and line widths. */
const ofTheWorker = '^viewer/(core\\.worker\\.ts$|heavy/)';
// styles, vectors, and the map of a single point from a picture and back
const harmlessToThePage =
  '^src/(drawing/(styles|svg-paint)|geometry/vec|intake/photo/(homography|at-depth|touch-noise))\\.ts$';

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
      name: 'words-take-types-only',
      comment:
        'words turns answers into text and computes none of them: it takes only their types, and how a length is written',
      severity: 'error',
      from: { path: '^src/words/' },
      to: {
        path: '^src/(model|joint|clearance|grind|goes)/',
        pathNot: '^src/model/length-text\\.ts$',
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
      name: 'main-thread-computes-nothing',
      comment: "the page's own thread draws: of what computes it takes only types, and leaves the rest to its worker",
      severity: 'error',
      from: { path: '^viewer/', pathNot: ofTheWorker },
      to: {
        path: '^(src/(geometry|intake|joint|clearance|grind|goes|drawing)|viewer/heavy)/',
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
      from: { path: '^(src|cli|viewer)/', pathNot: '^src/geometry/polygon-engine\\.ts$' },
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
