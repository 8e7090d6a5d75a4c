import type {
  CheckAnswer,
  FirstTouch,
  FoulingInterval,
  HomeAnswer,
  InstallAnswer,
} from '../../src/answers/check-answer.ts';

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
