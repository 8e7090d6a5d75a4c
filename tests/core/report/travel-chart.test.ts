import { describe, expect, it } from 'vitest';
import type { WayInResult } from '../../../src/clearance/check-result.ts';
import { type TravelCurve, travelCurve } from '../../../src/clearance/travel-curve.ts';
import { travelChart } from '../../../src/drawing/fit/travel-chart.ts';
import { overlap } from '../../../src/drawing/scene/frame.ts';
import type { Scene } from '../../../src/drawing/scene/scene.ts';
import { svgOf } from '../../../src/drawing/svg/svg.ts';
import type { Motion } from '../../../src/geometry/motion/motion.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { motionBetween, type Position } from '../../../src/job/path.ts';
import type { PlanResult } from '../../../src/plan/plan-result.ts';
import { chartCaption } from '../../../src/words/travel-text.ts';
import { demoToDraw } from '../../support/demos.ts';
import { parsedSvg, textBoxes } from '../../support/drawings.ts';

const { joint, check, plan } = demoToDraw('transfer-case');
const wayIn = check.wayIn as WayInResult;
const curve = drain(travelCurve(joint));
const after = drain(travelCurve((plan as PlanResult).judged));
const chartOf = (of: TravelCurve = curve, units: 'mm' | 'in' = 'mm'): Scene =>
  travelChart({ curve: of, after, wayIn, legs: joint.fit.legs, units });

const words = (scene: Scene): string[] => textBoxes(scene).map(({ text }) => text);
const rolesOf = (scene: Scene): string[] => scene.views.flatMap(({ layers }) => layers.map(({ role }) => role));

describe('the chart of the way in', () => {
  it('marks what was asked, every leg, where the part stands at their ends, and the first touch', () => {
    expect(words(chartOf())).toEqual(
      expect.arrayContaining([
        'asked 2 mm',
        'leg 1',
        'leg 2',
        'leg 3',
        'stand-off 190 mm',
        'stand-off 14 mm',
        'turn 22.0°',
        'home',
        'first touch: leg 2, turn 13.6°, stand-off 14.0 mm',
      ]),
    );
  });

  it('hatches what fouls, so that it is told without colour', () => {
    const stretch = chartOf().views.flatMap(({ layers }) => layers.filter(({ role }) => role === 'foul-stretch'));
    expect(stretch.flatMap(({ marks }) => marks.map(({ kind }) => kind))).toEqual(['outline', 'hatch']);
    expect(words(chartOf())).toContain('fouls');
  });

  it('shows the way in after the cut dotted, and says which line is which', () => {
    const dotted = chartOf().views.flatMap(({ layers }) => layers.filter(({ role }) => role === 'clearance-after'));
    const points = dotted.flatMap(({ marks }) =>
      marks.flatMap((mark) => (mark.kind === 'polyline' ? mark.points : [])),
    );
    // the plan of the demo leaves what was asked of the way in, which fouls as it is
    expect(points.length).toBeGreaterThan(after.pieces.length);
    expect(words(chartOf())).toEqual(expect.arrayContaining(['as it is', 'after the cut']));
    expect(chartCaption(curve, after, wayIn)).toContain('Dotted: once it is cut as planned.');
    const uncut = travelChart({ curve, after: null, wayIn, legs: joint.fit.legs, units: 'mm' });
    expect(rolesOf(uncut)).not.toContain('clearance-after');
    expect(words(uncut)).not.toContain('after the cut');
    expect(chartCaption(curve, null, wayIn)).not.toContain('Dotted');
  });

  it('marks no touch and no foul where there is none', () => {
    const clear = { ...wayIn, firstTouch: null, fouling: [] };
    const roles = rolesOf(travelChart({ curve, after: null, wayIn: clear, legs: joint.fit.legs, units: 'mm' }));
    expect(roles).not.toContain('first-touch');
    expect(roles).not.toContain('foul-stretch');
  });

  it.each(['mm', 'in'] as const)('has no words over others, nor off the sheet, in %s', (units) => {
    const scene = chartOf(curve, units);
    const boxes = textBoxes(scene);
    expect(boxes.flatMap((a, i) => boxes.slice(i + 1).filter((b) => overlap(a.box, b.box)))).toEqual([]);
    expect(
      boxes.filter(({ box }) => box.minX < 0 || box.minY < 0 || box.maxX > scene.widthMm || box.maxY > scene.heightMm),
    ).toEqual([]);
  });

  it('keeps the words of legs with shifts, and of short legs side by side, apart', () => {
    const at = (standOffMm: number, turnRad: number, x: number) => ({ standOffMm, turnRad, shift: vec(x, 0) });
    const stops = [at(190, 0.4, 12.5), at(14, 0.4, 12.5), at(14, 0.4, 0), at(14, 0.2, 0), at(14, 0, 0), at(0, 0, 0)];
    const legs = stops.slice(1).map((to, i) => {
      const from = stops[i] as Position;
      return { from, to, motion: motionBetween(from, to) as Motion };
    });
    const way = drain(travelCurve({ ...joint, fit: { ...joint.fit, legs } }));
    const boxes = textBoxes(travelChart({ curve: way, after: null, wayIn, legs, units: 'mm' }));
    expect(boxes.map(({ text }) => text)).toContain('shift 12.5, 0 mm');
    expect(boxes.flatMap((a, i) => boxes.slice(i + 1).filter((b) => overlap(a.box, b.box)))).toEqual([]);
  });

  it('is drawn for a way in on which nothing ever shares depth', () => {
    const none = curve.pieces.map((piece) => ({ ...piece, clearanceMm: null, errorMm: null, worstClearanceMm: null }));
    const clear = { ...wayIn, clearanceMm: null, firstTouch: null, fouling: [] };
    const scene = travelChart({
      curve: { ...curve, pieces: none },
      after: null,
      wayIn: clear,
      legs: joint.fit.legs,
      units: 'mm',
    });
    expect(rolesOf(scene)).not.toContain('clearance-curve');
    expect(words(scene)).toContain('no depth shared: nothing to meet');
    expect(svgOf(scene)).not.toMatch(/NaN|Infinity/);
  });

  it('is well-formed XML that tells its story in words too', () => {
    const svg = svgOf(chartOf());
    expect(parsedSvg(svg).documentElement?.tagName).toBe('svg');
    expect(svg).toContain('First touch: leg 2, turn 13.6°');
    expect(svg).not.toMatch(/NaN|Infinity/);
  });
});
