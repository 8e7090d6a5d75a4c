import type {
  CheckResult,
  FirstTouch,
  FoulingStretch,
  HomeResult,
  Instant,
  WayInResult,
} from '../../src/clearance/check-result.ts';
import { noFoul } from '../../src/clearance/foul.ts';
import { vec } from '../../src/geometry/plane/vec.ts';

const turned = (deg: number): number => (deg * Math.PI) / 180;

/** Results as the core would give them, clear and ample unless a test says otherwise; mm and radians. */
export const homeOf = (said: Partial<HomeResult> = {}): HomeResult => ({
  state: 'clear',
  clearanceMm: 6.2,
  toleranceMm: 1e-6,
  errorMm: 1.1,
  errorRssMm: 0.74,
  worstClearanceMm: 5.1,
  foul: noFoul,
  endGapMm: null,
  alongCrankMm: null,
  nearest: { fixedAt: vec(100, 0), movingAt: vec(106.2, 0), fixedSection: 'ribs', movingSection: 'lips' },
  ...said,
});

const touching: Instant = { leg: 2, at: 0.38, turnRad: turned(13.62), standOffMm: 14 };

export const touchOf = (said: Partial<FirstTouch> = {}): FirstTouch => ({
  ...touching,
  fixedSection: 'ribs',
  movingSection: 'lips',
  where: vec(100, 100),
  depth: { fromMm: 14, toMm: 32 },
  dowelGaps: [],
  ...said,
});

export const foulingOf = (said: Partial<FoulingStretch> = {}): FoulingStretch => ({
  from: touching,
  to: { leg: 2, at: 0.94, turnRad: turned(1.38), standOffMm: 14 },
  fixedSection: 'ribs',
  movingSection: 'lips',
  depth: { fromMm: 14, toMm: 32 },
  ...said,
});

export const wayInOf = (said: Partial<WayInResult> = {}): WayInResult => ({
  ...homeOf(),
  nearest: {
    fixedAt: vec(100, 0),
    movingAt: vec(106.2, 0),
    fixedSection: 'ribs',
    movingSection: 'lips',
    leg: 2,
    at: 0.5,
    turnRad: turned(10),
    standOffMm: 14,
  },
  firstTouch: null,
  fouling: [],
  ...said,
});

export const foulOnTheWay: WayInResult = wayInOf({
  state: 'fouls',
  clearanceMm: 0,
  worstClearanceMm: -5.22,
  foul: { areaMm2: 95.1, deepestMm: 4.12, regions: [] },
  alongCrankMm: 0,
  firstTouch: touchOf(),
  fouling: [foulingOf()],
});

export const checkOf = (said: Partial<CheckResult> = {}): CheckResult => ({
  verdict: 'goes',
  reason: null,
  meetsClearance: true,
  home: homeOf(),
  wayIn: null,
  rotating: [],
  wander: null,
  notices: [],
  ...said,
});
