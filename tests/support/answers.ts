import type {
  CheckAnswer,
  FirstTouch,
  FoulingInterval,
  HomeAnswer,
  InstallAnswer,
} from '../../src/answers/check-answer.ts';
import type { BandAnswer, GrindAnswer } from '../../src/answers/grind-answer.ts';

/** Answers as the core would give them, clear and ample unless a test says otherwise; mm and degrees. */
export const homeOf = (said: Partial<HomeAnswer> = {}): HomeAnswer => ({
  state: 'clear',
  clearanceMm: 6.2,
  toleranceMm: 1e-6,
  errorMm: 1.1,
  errorRssMm: 0.74,
  worstClearanceMm: 5.1,
  foulAreaMm2: 0,
  deepestMm: 0,
  endGapMm: null,
  alongCrankMm: null,
  nearest: { fixedAt: [100, 0], movingAt: [106.2, 0], fixedSection: 'ribs', movingSection: 'lips' },
  ...said,
});

export const touchOf = (said: Partial<FirstTouch> = {}): FirstTouch => ({
  leg: 2,
  at: 0.38,
  turnDeg: 13.62,
  standOffMm: 14,
  fixedSection: 'ribs',
  movingSection: 'lips',
  where: [100, 100],
  ...said,
});

export const foulingOf = (said: Partial<FoulingInterval> = {}): FoulingInterval => ({
  leg: 2,
  fromAt: 0.38,
  toAt: 0.94,
  fromTurnDeg: 13.62,
  toTurnDeg: 1.38,
  fromStandOffMm: 14,
  toStandOffMm: 14,
  fixedSection: 'ribs',
  movingSection: 'lips',
  ...said,
});

export const installOf = (said: Partial<InstallAnswer> = {}): InstallAnswer => ({
  ...homeOf(),
  nearest: {
    fixedAt: [100, 0],
    movingAt: [106.2, 0],
    fixedSection: 'ribs',
    movingSection: 'lips',
    leg: 2,
    at: 0.5,
    turnDeg: 10,
    standOffMm: 14,
  },
  firstTouch: null,
  fouling: [],
  ...said,
});

export const foulOnTheWay: InstallAnswer = installOf({
  state: 'fouls',
  clearanceMm: 0,
  worstClearanceMm: -5.22,
  foulAreaMm2: 95.1,
  deepestMm: 4.12,
  alongCrankMm: 0,
  firstTouch: touchOf(),
  fouling: [foulingOf()],
});

export const checkOf = (said: Partial<CheckAnswer> = {}): CheckAnswer => ({
  format: 'fettle-check/1',
  title: 'A job',
  verdict: 'goes',
  reason: null,
  meetsClearance: true,
  dowelUp: { turnDeg: 0, shiftMm: [0, 0], rmsMm: null, spacingErrorMm: null, hand: 'cannot-tell', pairs: [] },
  bolts: [],
  home: homeOf(),
  install: null,
  rotating: [],
  warnings: [],
  ...said,
});

export const bandOf = (said: Partial<BandAnswer> = {}): BandAnswer => ({
  depth: [14, 32],
  lastDepth: [13, 33],
  areaMm2: 117.2,
  takeOffMm: 6.12,
  loops: [],
  firstLoops: [],
  lastLoops: [],
  neededAreaMm2: 117.2,
  extraAreaMm2: 0,
  cutterWay: null,
  straightExtraAreaMm2: null,
  ...said,
});

export const planOf = (said: Partial<GrindAnswer> = {}): GrindAnswer => ({
  format: 'fettle-grind/1',
  title: 'A job',
  part: 'fixed',
  holds: true,
  reason: null,
  boundMm: 0.01,
  volumeMm3: 2912,
  massG: 20.9,
  sections: [{ id: 'ribs', nothingLeft: false, bands: [bandOf()] }],
  walls: [],
  thin: [],
  readings: [],
  unmeasured: [],
  cutter: null,
  straight: null,
  movingCut: null,
  smallestFilletMm: null,
  severed: [],
  uncured: [],
  table: [],
  afterCut: { home: homeOf(), install: null },
  alternatives: [],
  warnings: [],
  ...said,
});
