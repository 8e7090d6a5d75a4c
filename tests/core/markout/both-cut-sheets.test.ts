import { describe, expect, it } from 'vitest';
import { checkJoint } from '../../../src/clearance/check.ts';
import { drawFit } from '../../../src/drawing/fit/draw-fit.ts';
import type { DrawInput } from '../../../src/drawing/fit/draw-input.ts';
import { overlap } from '../../../src/drawing/scene/frame.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { markingOut } from '../../../src/markout/marking-out.ts';
import { bothCut } from '../../support/both-cut.ts';
import { textBoxes } from '../../support/drawings.ts';
import { markoutFor } from '../../support/plan-answer.ts';
import { elementsOf, parsedReport, reportOf, tableOf, textOf } from '../../support/reports.ts';

const { joint, plan } = bothCut();
const input: DrawInput = { joint, plan, check: drain(checkJoint(joint)), alternatives: [], room: [] };

describe('the sheets where both parts are cut', () => {
  const { sheets } = markoutFor({ joint, plan });

  it('are made for each part, named after it', () => {
    for (const part of ['housing', 'starter'])
      for (const sheet of ['marking-out', 'side-strips'])
        expect(sheets.map(({ name }) => name)).toContain(`${part}-${sheet}`);
    expect(new Set(sheets.map(({ name }) => name)).size).toBe(sheets.length);
  });

  it.each(['Housing', 'Starter'])('say large that they are of %s, and are seen looking at its face', (part) => {
    const own = sheets.filter(({ name }) => name.startsWith(part.toLowerCase()));
    for (const { purpose, scenes } of own) {
      expect(purpose).toMatch(new RegExp(`^${part}: `));
      for (const scene of scenes(true)) {
        expect(scene.title).toMatch(new RegExp(`^${part}: `));
        const words = textBoxes(scene).map(({ text }) => text);
        expect(words.join(' ')).toContain(`mating face of ${part}`);
      }
    }
  });

  it('have tables from the dowels of their own part', () => {
    const csv = (name: string): string => sheets.find((sheet) => sheet.name === name)?.csv ?? '';
    expect(csv('housing-marking-out')).toContain('divider from D1');
    expect(csv('starter-marking-out')).toContain('divider from P1');
  });
});

describe('the drawing where both parts are cut', () => {
  const scene = drawFit(input);
  const boxes = textBoxes(scene);

  it('shows what comes off each, in the bars of its own part', () => {
    const bars = boxes.filter(({ view }) => view === 'depths').map(({ text }) => text);
    const order = ['Housing', 'take off, boss', 'Starter', 'take off, body'].map((words) =>
      bars.findIndex((bar) => bar.startsWith(words)),
    );
    expect(order).not.toContain(-1);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
  });

  it('names the part beside each cut', () => {
    const words = boxes.map(({ text }) => text).join(' ');
    expect(words).toContain('Housing, boss');
    expect(words).toContain('Starter, body');
  });

  it('hatches as many places as there are cuts', () => {
    const face = scene.views.find(({ id }) => id === 'face-view');
    const hatched = face?.layers.filter(({ role }) => role === 'relief-hatch').flatMap(({ marks }) => marks) ?? [];
    expect(hatched).toHaveLength(2);
  });

  it('has no line of text over another', () => {
    const over = boxes.flatMap((a, i) => boxes.slice(i + 1).filter((b) => overlap(a.box, b.box)));
    expect(over).toEqual([]);
  });
});

it('the report has the cut, the amounts and the marking-out table of each part', () => {
  const page = parsedReport(reportOf(input));
  const [own, moving] = markingOut(joint, plan);
  expect(tableOf(page, /^Metal to come off Housing,/)[1]?.[0]).toBe('boss');
  expect(tableOf(page, /^Metal to come off Starter,/)[1]?.[0]).toBe('body');
  expect(tableOf(page, /^Places on the planned line of Housing/)).toHaveLength(1 + (own?.length ?? 0));
  expect(tableOf(page, /^Places on the planned line of Starter/)).toHaveLength(1 + (moving?.length ?? 0));
  expect(elementsOf(page, 'h2').map(textOf)).toContain('What to take off Housing and Starter');
  expect(elementsOf(page, 'h3').map(textOf)).toContain('How much in all off Starter');
});
