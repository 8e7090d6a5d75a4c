import { describe, expect, it } from 'vitest';
import type { CheckNotice, LikelyDepths, StartRemedy } from '../../../src/clearance/notices.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import type { Drawing, MissCause } from '../../../src/joint/notices.ts';
import { noticeText } from '../../../src/words/notices.ts';

const fixed: Drawing = { file: 'block.part.json', viewedFrom: 'face', units: 'mm' };
const moving: Drawing = { file: 'case.part.json', viewedFrom: 'back', units: 'in' };
const drawings = { fixed, moving };
const files = { fixed: fixed.file, moving: moving.file };
const pair = { fixed: 'D1', moving: 'P1' };
const sections = { fixedSection: 'rib', movingSection: 'lip' };
const instead = [
  { fixed: 'B1', moving: 'H2' },
  { fixed: 'B2', moving: 'H1' },
];

const causes: Record<MissCause['kind'], MissCause> = {
  inches: { kind: 'inches', factor: 25.4, large: fixed.file, small: moving.file, ...drawings },
  'paired-wrongly': { kind: 'paired-wrongly', instead },
  'not-known': { kind: 'not-known', fewDowels: true, ...drawings },
};
const depths: Record<LikelyDepths['kind'], LikelyDepths> = {
  signs: { kind: 'signs', file: fixed.file },
  inward: { kind: 'inward', ...files },
  'signs-of-one': { kind: 'signs-of-one', ...files },
  'not-known': { kind: 'not-known', ...files },
};
const remedies: Record<StartRemedy['kind'], StartRemedy> = {
  signs: { kind: 'signs', file: fixed.file },
  'state-depths': { kind: 'state-depths', sections: ['rib'] },
  'farther-out': { kind: 'farther-out' },
};

/** One of every code at least; a code left out does not compile. */
const all: { readonly [Code in CheckNotice['code']]: readonly (CheckNotice & { readonly code: Code })[] } = {
  'one-dowel-pair': [{ code: 'one-dowel-pair', ...pair }],
  'dowel-spacing': [{ code: 'dowel-spacing', spacingErrorMm: 0.4 }],
  'dowel-spacing-measure-again': [{ code: 'dowel-spacing-measure-again', spacingErrorMm: -0.6 }],
  'hand-mirrored': [[], instead].map((instead) => ({
    code: 'hand-mirrored',
    asDrawnRmsMm: 80,
    mirroredRmsMm: 0.1,
    ...drawings,
    instead,
  })),
  'hand-cannot-tell': (['too-few', 'fit-both-ways'] as const).map((why) => ({ code: 'hand-cannot-tell', why })),
  'bolt-does-not-line-up': [0.75, -0.5].map((allowedMm) => ({
    code: 'bolt-does-not-line-up',
    ...pair,
    offsetMm: 1.1,
    allowedMm,
    at: vec(0, 0),
  })),
  'bolts-do-not-register': Object.values(causes).map((cause) => ({
    code: 'bolts-do-not-register',
    ...pair,
    offsetMm: 9.2,
    limitMm: 7.5,
    missing: 2,
    of: 6,
    cause,
    at: vec(0, 0),
  })),
  'dowels-do-not-register': Object.values(causes).map((cause) => ({
    code: 'dowels-do-not-register',
    offMm: 3,
    limitMm: 2,
    cause,
  })),
  'off-line-on-dowels': [{ code: 'off-line-on-dowels', leg: 1, standOffMm: 5, proudMm: 9 }],
  'off-line-on-shaft': [{ code: 'off-line-on-shaft', leg: 1, standOffMm: 5, engagesAtMm: 62 }],
  'trace-error-assumed': [{ code: 'trace-error-assumed', part: 'block', sections: ['rib', 'boss'], traceErrorMm: 1 }],
  'sizes-differ': [{ code: 'sizes-differ', factor: 25.4, large: fixed.file, small: moving.file, ...drawings }],
  'never-shares-depth': Object.values(depths).map((likely) => ({ code: 'never-shares-depth', likely })),
  'home-shares-nothing': Object.values(depths).map((likely) => ({ code: 'home-shares-nothing', likely })),
  'starts-in-shared-depth': Object.values(remedies).map((remedy) => ({
    code: 'starts-in-shared-depth',
    ...sections,
    remedy,
  })),
  'never-near': [true, false].map((fewDowels) => ({ code: 'never-near', leastMm: 40, fewDowels })),
  'inside-other-metal': [{ code: 'inside-other-metal', ...sections }],
  'sections-without-depth-overlap': [{ code: 'sections-without-depth-overlap', ...sections }],
  'not-traced-here': [{ code: 'not-traced-here', section: 'rib', side: 'moving' }],
  'tilt-needs-depths': [
    { code: 'tilt-needs-depths', sections: ['lips'] },
    { code: 'tilt-needs-depths', sections: ['lips', 'skirt'] },
  ],
  'rotating-close': [{ code: 'rotating-close', part: 'clutch', against: 'fixed', clearanceMm: 2, limitMm: 3 }],
};

describe('every notice', () => {
  const notices = Object.values(all).flat();

  it.each(notices.map((notice, i) => [`${notice.code} ${i}`, notice] as const))('%s has its own text', (_, notice) => {
    const text = noticeText(notice, 'mm');
    expect(text).toMatch(/^\S.*\.$/);
    expect(text).not.toMatch(/undefined|NaN|\[object/);
  });

  it('says something of its own', () => {
    const texts = notices.map((notice) => noticeText(notice, 'mm'));
    expect(new Set(texts).size).toBe(notices.length);
  });

  it('has its lengths in the units asked', () => {
    for (const notice of notices) expect(noticeText(notice, 'in')).not.toMatch(/\d mm\b/);
  });
});
