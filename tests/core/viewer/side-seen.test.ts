import { expect, it } from 'vitest';
import { trueBars } from '../../../src/drawing/scene/check-bars.ts';
import type { SvgNode } from '../../../src/drawing/svg/svg-marks.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { demoJob } from '../../../viewer/heavy/demo-job.ts';
import { make } from '../../../viewer/heavy/make.ts';
import type { Reply } from '../../../viewer/heavy/questions.ts';
import { work } from '../../../viewer/heavy/work.ts';

/** Where boxes begin and end across a picture, mm. */
const across = (nodes: readonly SvgNode[]): number[] => {
  const xs = nodes.flatMap(({ children }) =>
    children.flatMap((child) =>
      typeof child === 'string'
        ? []
        : [...(child.attributes.d ?? '').matchAll(/[ML](-?[\d.]+)/g)].map(([, x]) => Number(x)),
    ),
  );
  return [Math.min(...xs), Math.max(...xs)];
};

const repliesOf = (from: 'left' | 'right' | null): Reply[] =>
  [...work(demoJob(), false, from)].flatMap((reply) => ('kind' in reply ? [reply] : []));

it.each(['left', 'right'] as const)(
  'a job that was seen from the %s is drawn from there, what is cut of it too',
  (from) => {
    const replies = repliesOf(from);
    const checked = replies.find((reply) => reply.kind === 'checked');
    const planned = replies.find((reply) => reply.kind === 'planned');
    if (checked?.kind !== 'checked' || planned?.kind !== 'planned')
      throw new Error('the worked job is checked and planned');
    expect(checked.pictures.seenFrom).toBe(from);
    // the fixed part lies behind the face: to the right of it where one stands on the right
    for (const nodes of [planned.cut.side, checked.pictures.fouls.side])
      for (const x of across(nodes)) expect(Math.sign(x)).toBe(from === 'right' ? 1 : -1);
  },
);

it('a job that was not seen yet is drawn from the side of what is in its way', () => {
  const checked = repliesOf(null).find((reply) => reply.kind === 'checked');
  expect(checked?.kind === 'checked' && checked.pictures.seenFrom).toBe('right');
});

it.each(['left', 'right', null] as const)(
  'the drawing and the report made on a page that sees it from the %s see it from there, and say so',
  async (from) => {
    const printing = { paper: 'a4', bars: trueBars, mirrored: false, date: '2026-03-01', page: '' } as const;
    for (const as of ['drawing', 'report'] as const) {
      const reply = await drain(make(demoJob(), { as, ...printing }, from));
      const text = reply.kind === 'made' ? String(reply.file?.data) : '';
      const sides = [...text.matchAll(/level with the face view, seen from its (\w+)/g)].map(([, side]) => side);
      expect(new Set(sides), as).toEqual(new Set([from ?? 'right']));
    }
  },
);
