import { DOMParser, type Document, type Element } from '@xmldom/xmldom';
import type { DrawInput } from '../../src/drawing/fit/draw-input.ts';
import { boxOfText } from '../../src/drawing/scene/marks.ts';
import { onSheet, type Scene } from '../../src/drawing/scene/scene.ts';
import { type Box, boxAround } from '../../src/geometry/plane/edge-box.ts';
import { vec } from '../../src/geometry/plane/vec.ts';
import type { Polygons } from '../../src/geometry/polygons/polygons.ts';
import { checkOf, foulOnTheWay } from './answers.ts';
import { boltHole, box, castingOf, disc, dowel, type JobSpec, ringPiece, tapped } from './jobs.ts';
import { jointOf } from './joints.ts';
import { bandOf, planOf } from './plans.ts';

/** A job with something of every kind to draw. */
export const fullJob: JobSpec = {
  title: 'A job',
  fixed: castingOf({
    name: 'Block, flywheel end',
    castingNumber: '4711-A',
    sections: [
      { id: 'flange', depth: [0, 12], loops: [disc(0, 0, 100), disc(0, 0, 40)] },
      { id: 'rib', depth: [12, 60], mayCut: true, loops: [box(60, 10, 118, 20)] },
    ],
    holes: [dowel('D1', [-80, 0], 9, 14), tapped('B1', [0, 80]), dowel('D2', [80, -20], 9, 14)],
    hollows: [{ id: 'gallery', depth: [12, 60], loops: [disc(80, 15, 3)] }],
    doNotCut: [{ id: 'ear', depth: [0, 12], loops: [box(70, -40, 95, -30)] }],
    traced: { depth: [0, 60], loops: [disc(0, 0, 140)] },
  }),
  moving: castingOf({
    name: 'Housing',
    viewedFrom: 'back',
    sections: [
      { id: 'plate', depth: [0, 10], loops: [disc(0, 0, 130), disc(0, 0, 90)] },
      { id: 'lip', depth: [-30, 0], loops: [ringPiece(112, 120, -30, 0)] },
    ],
    holes: [dowel('P1', [-80, 0], 0, 14), dowel('P2', [80, -20], 0, 14), boltHole('H1', [0.9, 80], 13.5)],
  }),
  rotating: [castingOf({ name: 'Flywheel', sections: [{ depth: [-30, -5], loops: [disc(0, 0, 70)] }] })],
  dowels: [
    ['D1', 'P1'],
    ['D2', 'P2'],
  ],
  bolts: [['B1', 'H1']],
  offerUp: [{ standOff: 60, turn: 30 }, { standOff: 12, turn: 30 }, { standOff: 12 }, {}],
};

/** Results of the right kind for that job: its rib fouls the lip on the second leg and is to be cut. */
export function fullInput(spec: JobSpec = fullJob): DrawInput {
  const joint = jointOf(spec);
  const tip = box(112, 10, 118, 20);
  const wayIn = {
    ...foulOnTheWay,
    nearest: {
      fixedAt: vec(118, 10),
      movingAt: vec(118, 10),
      fixedSection: 'rib',
      movingSection: 'lip',
      leg: 2,
      at: 0.4,
      turnRad: Math.PI / 10,
      standOffMm: 12,
    },
    foul: {
      areaMm2: 60,
      deepestMm: 6,
      regions: [{ section: 'rib', depth: { fromMm: 12, toMm: 60 }, loops: [tip] }],
    },
    fouling: foulOnTheWay.fouling.map(({ from, to, ...stretch }) => ({
      ...stretch,
      fixedSection: 'rib',
      movingSection: 'lip',
      from: { ...from, standOffMm: 12 },
      to: { ...to, standOffMm: 12 },
    })),
  } satisfies typeof foulOnTheWay;
  const home = {
    ...checkOf().home,
    clearanceMm: 10,
    nearest: { fixedAt: vec(118, 10), movingAt: vec(118, 0), fixedSection: 'rib', movingSection: 'lip' },
  } satisfies ReturnType<typeof checkOf>['home'];
  const from = (x: number): Polygons => [[vec(x, 10), vec(118, 10), vec(118, 20), vec(x, 20)]];
  const band = bandOf({ depth: { fromMm: 12, toMm: 20 }, planned: from(110), first: from(111), last: from(109) });
  return {
    joint,
    check: checkOf({ verdict: 'fouls', home, wayIn }),
    plan: planOf(joint, { sections: [{ id: 'rib', nothingLeft: false, bands: [band] }] }),
    alternatives: [],
    room: [ringPiece(112, 120, -30, 30)],
  };
}

/** An SVG file as a document; anything that is not well-formed XML is an error. */
export const parsedSvg = (svg: string): Document =>
  new DOMParser({
    onError: (level, message) => {
      throw new Error(`${level}: ${message}`);
    },
  }).parseFromString(svg, 'image/svg+xml');

export const elementById = (svg: Document, id: string): Element => {
  const found = svg.getElementById(id);
  if (found === null) throw new Error(`no element ${id}`);
  return found;
};

/** Where every line of text stands on the sheet, with what it says. */
export const textBoxes = (scene: Scene): { readonly view: string; readonly text: string; readonly box: Box }[] =>
  scene.views.flatMap((view) =>
    view.layers.flatMap(({ marks }) =>
      marks.flatMap((mark) => {
        if (mark.kind !== 'text') return [];
        const { minX, minY, maxX, maxY } = boxOfText(mark, view.scale);
        const corners = [onSheet(view, vec(minX, minY)), onSheet(view, vec(maxX, maxY))];
        const box = boxAround(corners.map(({ x, y }) => ({ minX: x, minY: y, maxX: x, maxY: y })));
        return [{ view: view.id, text: mark.text, box }];
      }),
    ),
  );
