import { describe, expect, it } from 'vitest';
import type { PartDraft, PictureFile } from '../../../src/files/job-file.ts';
import { trueAtDepth } from '../../../src/intake/photo/at-depth.ts';
import { carried } from '../../../src/intake/photo/homography.ts';
import { setStraight } from '../../../viewer/heavy/set-straight.ts';
import { matrix3dOf, matrixNear, toPaneMap } from '../../../viewer/stage/picture-under.ts';
import { toPane } from '../../../viewer/stage/view.ts';
import { askedOfPicture } from '../../../viewer/steps/photo/asked-of-picture.ts';
import { forPlace, type OverPicture } from '../../../viewer/steps/photo/over-picture.ts';
import { statedError } from '../../../viewer/steps/photo/stated-error.ts';
import { seenBy, seenInPlane } from '../../support/camera.ts';
import { camera, untracedBlock } from '../../support/photographed-job.ts';
import { blockFile } from '../../support/small-job.ts';

const part = { ...untracedBlock, sections: blockFile.sections } as unknown as PartDraft;
const holes = (part.holes ?? []).filter(({ id }) => id !== 'CRANK');
const pxOf = ([x, y]: readonly [number, number]): [number, number] => {
  const px = seenInPlane(camera, { x, y });
  return [px.x, px.y];
};
const picture: PictureFile = {
  id: 'picture 1',
  part: 'block.part.json',
  name: 'face.jpg',
  mediaType: 'image/jpeg',
  data: '',
  touches: holes.map(({ id, at }) => ({ px: pxOf(at), at, hole: id })),
};
const rib = { list: 'sections', index: 0 } as const;
const loaded = { blob: new Blob(), url: '', size: camera, head: new Uint8Array() };
const set = setStraight(askedOfPicture(part, picture, loaded));
const over = {
  picture,
  loaded,
  setting: set.setting.ok ? set.setting.value : null,
  camera: set.camera.ok ? set.camera.value : null,
  error: statedError(set, 'mm'),
  strength: 1,
  pull: () => Promise.resolve(null),
} as OverPicture;

describe('a picture set straight by seven holes seen exactly', () => {
  it('finds the camera where the pinhole stands', () => {
    expect(set.camera).toMatchObject({ ok: true, value: { by: 'points' } });
    expect(over.camera?.heightMm).toBeCloseTo(camera.at.z, 3);
    expect(over.camera?.foot.x).toBeCloseTo(camera.at.x, 3);
  });

  it('is wrong further out by more: an outline in the picture counts, one out of it does not', () => {
    const near = statedError(setStraight({ ...askedOfPicture(part, picture, loaded), outlined: [] }), 'mm') ?? 0;
    const rib = statedError(set, 'mm') ?? 0;
    const far = setStraight({ ...askedOfPicture(part, picture, loaded), outlined: [{ x: 4000, y: 0 }] });
    expect(rib).toBeGreaterThan(near);
    expect(statedError(far, 'mm')).toBe(near);
  });

  it('takes the camera’s distance as it was measured before what the points tell', () => {
    const told = setStraight(askedOfPicture(part, { ...picture, cameraAway: 1100 }, loaded));
    expect(told.camera).toMatchObject({ ok: true, value: { by: 'height' } });
    expect(told.camera.ok && told.camera.value.heightMm).toBeCloseTo(1100, 3);
  });

  it('puts a rib 12 mm behind the face where it is, as the camera sees it there', () => {
    const { beneath, toPicture, behindMm } = forPlace(over, part, rib);
    expect(behindMm).toBe(12);
    const at = { x: 160, y: 4 };
    const px = seenBy(camera, { ...at, z: -12 });
    const put = carried(beneath.toPlane, px);
    expect(put?.x).toBeCloseTo(at.x, 4);
    expect(put?.y).toBeCloseTo(at.y, 4);
    expect(carried(toPicture, at)?.x).toBeCloseTo(px.x, 4);
    const inPlane = carried(over.setting.fit.toPlane, px) as { x: number; y: number };
    const byDepth = trueAtDepth(over.camera as NonNullable<OverPicture['camera']>, inPlane, 12);
    expect(byDepth.ok && byDepth.value.x).toBeCloseTo(at.x, 4);
  });

  it('is shown for the depth said of a section, else for where the section begins, else for the points’ own', () => {
    const said = { ...over, picture: { ...picture, tracedDepths: { rib: 20 }, planeDepth: 5 } };
    expect(forPlace(said, part, rib).behindMm).toBe(15);
    expect(forPlace({ ...over, picture: { ...picture, planeDepth: 5 } }, part, rib).behindMm).toBe(7);
    expect(forPlace(over, part, null).behindMm).toBe(0);
    expect(forPlace({ ...over, camera: null }, part, rib).behindMm).toBe(0);
  });

  it.each(['hollows', 'doNotCut'] as const)(
    'is shown for the depth of %s as well, which may go by the name of a section',
    (list) => {
      const more = { ...part, [list]: [{ id: 'rib', depth: [30, 40], loops: [] }] };
      const place = { list, index: 0 };
      expect(forPlace(over, more, place).behindMm).toBe(30);
      const said = { ...over, picture: { ...picture, tracedDepths: { rib: 20, [`${list}/rib`]: 35 } } };
      expect(forPlace(said, more, place).behindMm).toBe(35);
      expect(forPlace(said, more, rib).behindMm).toBe(20);
    },
  );

  it.each([
    ['the face, drawn from the face', 'face', false, 12],
    ['the face, drawn from behind', 'back', true, 12],
    ['its back, drawn from behind', 'back', false, -60],
    ['its back, drawn from the face', 'face', true, -60],
  ] as const)(
    'a rib from 12 to 60 is met by the camera at its nearer end: of %s',
    (_, viewedFrom, mirrored, behind) => {
      const seen = { ...over, setting: { ...over.setting, mirrored } };
      expect(forPlace(seen, { ...part, viewedFrom }, rib).behindMm).toBe(behind);
    },
  );
});

describe.each([
  { pxPerMm: 0.3, origin: { x: 200, y: 150 } },
  { pxPerMm: 40, origin: { x: -3000, y: 5000 } },
])('under a pane at %o', (view) => {
  const { beneath, toPicture } = forPlace(over, part, null);
  const numbers = (text: string) => (/\((.*)\)/.exec(text)?.[1] ?? '').split(/[ ,]/).map(Number);

  it('the CSS matrix carries a pixel to where the drawing has its place', () => {
    const m = numbers(matrix3dOf(toPaneMap(beneath, view), camera));
    const at = (row: number, column: number) => m[4 * column + row] as number;
    for (const place of [
      { x: -100, y: 0 },
      { x: 74, y: -76 },
    ]) {
      const { x, y } = seenInPlane(camera, place);
      const row = (r: number) => at(r, 0) * x + at(r, 1) * y + at(r, 3);
      const drawn = toPane(view, place);
      expect(row(0) / row(3)).toBeCloseTo(drawn.x, 3);
      expect(row(1) / row(3)).toBeCloseTo(drawn.y, 3);
    }
  });

  it('the lens shows a pixel beside the finger within a hundredth of its way', () => {
    const place = { x: 74, y: -76 };
    const [a, b, c, d, e, f] = numbers(matrixNear(beneath, toPicture, view, toPane(view, place)) ?? '') as [
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    const beside = { x: 76, y: -75 };
    const px = seenInPlane(camera, beside);
    const [drawn, finger] = [toPane(view, beside), toPane(view, place)];
    const off = Math.hypot(a * px.x + c * px.y + e - drawn.x, b * px.x + d * px.y + f - drawn.y);
    expect(off).toBeLessThan(0.01 * Math.hypot(drawn.x - finger.x, drawn.y - finger.y));
  });
});

describe('a picture taken square-on', () => {
  const two = { ...picture, squareOn: true, touches: picture.touches.slice(0, 2) };

  it('states no error until the camera’s distance is said, and then reckons with a lean', () => {
    const unsaid = setStraight(askedOfPicture(part, two, loaded));
    expect(unsaid.setting.ok && statedError(unsaid, 'mm')).toBeNull();
    const said = setStraight(askedOfPicture(part, { ...two, cameraAway: 3000 }, loaded));
    expect(statedError(said, 'mm') ?? 0).toBeGreaterThan(said.errorMm ?? 0);
    // r·sin t / D of r, to first order
    const { reachMm = 0, oneDegreeMm = 0 } = said.lean ?? {};
    expect(oneDegreeMm).toBeCloseTo((reachMm * reachMm * Math.sin(Math.PI / 180)) / 3000, 1);
  });

  it('takes two points, not three', () => {
    const three = setStraight(askedOfPicture(part, { ...two, touches: picture.touches.slice(0, 3) }, loaded));
    expect(three.setting).toEqual({ ok: false, faults: [{ code: 'too-few-points', found: 3, needed: 2 }] });
  });
});
