import { describe, expect, it } from 'vitest';
import { lengthText } from '../../../src/job/length-text.ts';
import { checkCautions, grindCautions } from '../../../src/words/cautions.ts';
import { planLine } from '../../../src/words/grind-text.ts';
import { noticeText } from '../../../src/words/notices.ts';
import { massText, volumeText } from '../../../src/words/units.ts';
import { verdictLine } from '../../../src/words/verdict.ts';
import { demos, demoToDraw } from '../../support/demos.ts';
import { fullInput, fullJob } from '../../support/drawings.ts';
import { answerOf } from '../../support/plan-answer.ts';
import { elementsOf, parsedReport, reportInput, reportOf, tableOf, textOf } from '../../support/reports.ts';

const names = Object.keys(demos) as (keyof typeof demos)[];
const reports = new Map(
  names.map((name) => {
    const drawn = demoToDraw(name);
    const html = reportOf(drawn);
    return [name, { drawn, html, page: parsedReport(html), text: textOf(parsedReport(html).documentElement as never) }];
  }),
);
const reported = (name: (typeof names)[number]) => {
  const report = reports.get(name);
  if (report === undefined) throw new Error(name);
  return report;
};

describe.each(names)('the report of the demo %s', (name) => {
  const { drawn, html, page, text } = reported(name);
  const { joint, check, plan } = drawn;
  const answer = plan === null ? undefined : answerOf({ joint, plan });

  it('fetches nothing, runs nothing, and forbids both', () => {
    const addresses = [...html.matchAll(/(?:src|href|action|data|poster)="([^"]*)"/g)].map(([, address]) => address);
    expect(addresses.filter((address) => !address?.startsWith('#'))).toEqual([]);
    expect(html).not.toMatch(/<(?:script|link|img|iframe|object|embed|base|form)\b|\son\w+=|@import|javascript:/i);
    expect([...html.matchAll(/url\(([^)]*)\)/g)].filter(([, address]) => !address?.startsWith('#'))).toEqual([]);
    // names of vocabularies are no addresses to fetch
    expect(html.replace(/xmlns="[^"]*"/g, '')).not.toMatch(/https?:/);
    expect(html).toContain("default-src 'none'");
  });

  it('says the verdict first, then the plan', () => {
    const [first, second] = elementsOf(page, 'p').map(textOf);
    expect(first).toBe(verdictLine(check));
    expect(second).toBe(planLine(joint, plan as never));
  });

  it('names every part of itself once, and every reference leads somewhere', () => {
    const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id as string);
    expect(new Set(ids).size).toBe(ids.length);
    const used = [
      ...[...html.matchAll(/href="#([^"]*)"/g)].map(([, id]) => id as string),
      ...[...html.matchAll(/url\(#([^)]*)\)/g)].map(([, id]) => id as string),
      ...[...html.matchAll(/aria-labelledby="([^"]*)"/g)].flatMap(([, some]) => (some as string).split(' ')),
    ];
    expect(used.filter((id) => !ids.includes(id))).toEqual([]);
  });

  it('is in English, with one first heading, no level left out, and a caption on every table and figure', () => {
    expect(page.documentElement?.getAttribute('lang')).toBe('en');
    const levels = [...html.matchAll(/<h(\d)/g)].map(([, level]) => Number(level));
    expect(levels[0]).toBe(1);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    for (const [i, level] of levels.slice(1).entries()) expect(level).toBeLessThanOrEqual((levels[i] ?? 0) + 1);
    for (const table of elementsOf(page, 'table')) {
      expect(elementsOf(table, 'caption')).toHaveLength(1);
      expect(elementsOf(table, 'th').filter((head) => !head.getAttribute('scope'))).toEqual([]);
    }
    for (const figure of elementsOf(page, 'figure')) expect(elementsOf(figure, 'figcaption')).toHaveLength(1);
  });

  it('gives both figures of every measure beside what was asked', () => {
    const rows = tableOf(page, /as traced/);
    expect(rows[0]).toEqual(['', '', 'as traced', 'at worst', 'asked']);
    for (const [measure, row] of [
      [check.home, 'home'],
      [check.wayIn, 'way in'],
    ] as const) {
      if (measure === null) continue;
      const [, state, traced, worst] = rows.find(([head]) => head === row) ?? [];
      expect(state).toBe(measure.state);
      const fouls = measure.state === 'fouls';
      const [clearanceMm, worstMm] = [measure.clearanceMm as number, measure.worstClearanceMm as number];
      expect(Number.parseFloat(traced ?? '')).toBeCloseTo(fouls ? (measure.foul.deepestMm as number) : clearanceMm, 0);
      expect(Number.parseFloat(worst ?? '')).toBeCloseTo(fouls ? -worstMm : worstMm, 0);
      expect(`${traced} ${worst}`.split('deep')).toHaveLength(fouls ? 3 : 1);
    }
    expect(rows).toHaveLength(1 + (check.wayIn === null ? 1 : 2) + check.rotating.length);
  });

  it('carries every caution, warning and hash, what is assumed aloud, the date and the version', () => {
    const cuts = (answer?.sections.length ?? 0) > 0;
    for (const words of [
      ...(cuts ? grindCautions(joint) : checkCautions(joint)),
      ...check.notices.map((notice) => noticeText(notice, joint.fit.units)),
      ...(answer?.warnings ?? []).map((warning) => warning.text),
      'ab'.repeat(32),
      'Made on 2026-03-01 by Fettle 1.2.3.',
      'Proved for the outlines as traced',
    ])
      expect(text).toContain(words);
    expect(text).toMatch(/What was traced of .* is taken as complete: metal that nobody traced is not known here/);
  });

  it('gives what comes off: amounts, every band, every row of the marking-out table', () => {
    if (answer === undefined || answer.sections.length === 0) return expect(html).not.toContain('Marking-out table');
    expect(text).toContain(massText(answer.massG as number));
    expect(text).toContain(volumeText(answer.volumeMm3 as number, 'mm'));
    const bands = answer.sections.flatMap(({ id, bands }) => bands.map((band) => [id, band] as const));
    const rows = tableOf(page, /^Metal to come off/).slice(1);
    expect(rows.map(([id, , , deepest]) => [id, deepest])).toEqual(
      bands.map(([id, { takeOffMm }]) => [id, lengthText(takeOffMm as number, 'mm')]),
    );
    const marks = tableOf(page, /^Places on the planned line/).slice(1);
    expect(marks.map(([place]) => Number(place))).toEqual(answer.table.map(({ place }) => place));
    for (const { hollow, wallMm, nominalMm } of answer.walls)
      expect(text).toContain(
        `${hollow}: ${lengthText(nominalMm, 'mm')} as planned, ${lengthText(wallMm, 'mm')} at worst`,
      );
  });
});

describe('the report of the transfer case', () => {
  const { page, text, drawn } = reported('transfer-case');

  it('tells a builder what to measure where it first touches', () => {
    const touch = drawn.check.wayIn?.firstTouch;
    if (!touch) throw new Error('the demo touches on the way in');
    expect((touch.turnRad * 180) / Math.PI).toBeCloseTo(13.6, 1);
    expect(touch.dowelGaps).toHaveLength(2);
    for (const { fixed, gapMm } of touch.dowelGaps)
      expect(text).toContain(`${fixed} to its hole${lengthText(gapMm, 'mm')}, measured square to the axis`);
  });

  it('lists every bolt and says which does not line up', () => {
    const rows = tableOf(page, /^Bolts: 5 of 6 line up$/);
    expect(rows.filter((row) => row.includes('DOES NOT LINE UP')).map(([bolt]) => bolt)).toEqual(['B5–H5']);
    expect(rows).toHaveLength(7);
  });

  it('tells whoever is at the bench nothing of commands', () => {
    expect(textOf(page.documentElement as never)).not.toMatch(/fettle (check|grind|draw|markout|report)/);
  });

  it('shows the face, the side, the details, the key and the way in, each told in words too', () => {
    const drawings = elementsOf(page, 'svg');
    expect(drawings.map((svg) => textOf(elementsOf(svg, 'title')[0] as never))).toEqual([
      'Face view',
      'Detail A',
      'Detail B',
      'Detail C',
      'What the lines mean',
      'Side view',
      'Depths',
      'Least clearance along the way in',
      'Where the numbers of the table are on Iron four. Nothing is measured off this picture.',
      'Detail A.',
      'Detail B.',
    ]);
    for (const svg of drawings) expect(textOf(elementsOf(svg, 'desc')[0] as never)).not.toBe('');
  });
});

describe('a report', () => {
  it('shows hostile names as they are written, and lets none of them become markup', () => {
    const hostile = `</style></td><script>alert("x")</script><img src='x' onerror='y'>&amp;`;
    const input = fullInput({ ...fullJob, title: hostile });
    const report = reportInput({
      ...input,
      joint: { ...input.joint, fixed: { ...input.joint.fixed, name: hostile } },
    });
    const html = reportOf(report);
    const page = parsedReport(html);
    expect(elementsOf(page, 'script')).toEqual([]);
    expect(elementsOf(page, 'img')).toEqual([]);
    expect(textOf(elementsOf(page, 'h1')[0] as never)).toBe(hostile);
    expect(html).not.toMatch(/<script|<img/);
  });

  it('says where a tracing error was only assumed, and that nobody drew a hollow', () => {
    const { joint, ...rest } = fullInput();
    const fixed = {
      ...joint.fixed,
      hollows: [],
      sections: joint.fixed.sections.map((section) => ({ ...section, traceErrorStated: false })),
    };
    const text = textOf(parsedReport(reportOf({ ...rest, joint: { ...joint, fixed } })).documentElement as never);
    expect(text).toMatch(/The tracing error of "flange" and "rib" of Block was not stated: ± [\d.]+ mm is assumed\./);
    expect(text).toContain('No hollow of Block was drawn');
  });

  it('speaks of no way in where only home was asked', () => {
    const { html } = reported('starter');
    expect(html).not.toContain('id="travel-');
    expect(html).toContain('Only the home position was asked');
  });
});
