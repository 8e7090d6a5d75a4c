import type { CutterNotice } from '../notices.ts';
import type { CutterEnd, CutterResult } from './cutter-result.ts';

/** What a cutter leaves behind, cannot get at, or was not asked about. */
export const cutterNotices = ({ ends, narrow, covered, radiusMm }: CutterResult): CutterNotice[] => [
  ...ends.flatMap(endNotice),
  ...narrow.map((place) => ({ code: 'cutter-cannot-enter' as const, ...place, radiusMm })),
  ...covered.map(({ section, by, at }) => ({ code: 'cutter-covered' as const, section, by, at })),
];

function endNotice({ section, atMm, what, mm, reachMm, against, at }: CutterEnd): CutterNotice[] {
  const fillet = { section, atMm, heightMm: mm, reachMm, at };
  switch (what) {
    case 'left':
      return [{ code: 'cutter-fillet-left', ...fillet }];
    case 'against':
      return [{ code: 'cutter-fillet-against', ...fillet, against }];
    case 'cut-past':
    case 'run-past':
      return [];
  }
}
