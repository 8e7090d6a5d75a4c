import type { Box } from '../../geometry/plane/edge-box.ts';
import { vec } from '../../geometry/plane/vec.ts';
import { givenLength } from '../../job/length-text.ts';
import type { Position } from '../../job/path.ts';
import { type Callout, placeCallouts } from '../scene/callouts.ts';
import { grown, middleOf } from '../scene/frame.ts';
import { boxOfLayers, layer, line, text, viewOf } from '../scene/marks.ts';
import type { Layer, View } from '../scene/scene.ts';
import type { Sizes } from '../scene/sizes.ts';
import { type Across, bandBlocks } from './across.ts';
import { briefDepth } from './depth-words.ts';
import type { DrawInput } from './draw-input.ts';
import { positionsPastFace, sideLayers } from './side-layers.ts';
import type { WorkPlace } from './work-places.ts';

/** A place of work and the letter of its detail view, where it has one. */
export interface LetteredWork {
  readonly letter: string | null;
  readonly work: WorkPlace;
}

/** The joint from the side at true scale, to stand level with the face view; x = 0 is the mating face. */
export function sideView(input: DrawInput, works: readonly LetteredWork[], across: Across, sizes: Sizes): View {
  const positions = positionsPastFace(input);
  const solids = sideLayers(input, positions, across, sizes);
  const drawn = boxOfLayers(solids);
  const room = grown(drawn, 0.5 * sizes.textMm);
  const callouts = placeCallouts(workCallouts(input, works, across), room, sizes, [across.from]);
  return viewOf('side-view', [...solids, ...faceLines(input, positions, across, drawn, sizes), ...callouts.layers]);
}

/** What comes off, or is in the way, and at which depths. */
function workCallouts({ joint }: DrawInput, works: readonly LetteredWork[], across: Across): Callout[] {
  return works.flatMap(({ letter, work }) =>
    work.works.map(({ part, section, depth, loops, words }): Callout => {
      const title = letter === null ? section : `${letter}: ${section}`;
      return {
        anchors: bandBlocks(loops, depth, part, across).map(middleOf),
        title: `${title}, ${briefDepth(depth, joint.fit.units)}`,
        detail: words,
        role: 'text',
      };
    }),
  );
}

/** The mating faces as lines across the view: both at home, and the moving part's at each stand-off drawn. */
function faceLines(
  { joint }: DrawInput,
  positions: readonly Position[],
  { from, x }: Across,
  drawn: Box,
  { textMm }: Sizes,
): Layer[] {
  const rows = [0, ...new Set(positions.map(({ standOffMm }) => standOffMm))];
  const top = (row: number): number => drawn.maxY + (1 + 1.5 * row) * textMm;
  const lines = rows.map((z, row) => line(vec(x(z), drawn.minY - textMm), vec(x(z), top(row))));
  // words run away from the moving part, so that no further face's line crosses them
  const anchor = from === 'right' ? 'start' : 'end';
  const words = rows.map((z, row) =>
    text(
      vec(x(z), top(row) + 0.4 * textMm),
      row === 0 ? 'mating faces, home' : `face at stand-off ${givenLength(z, joint.fit.units)}`,
      textMm,
      { anchor },
    ),
  );
  return [layer('mating-face', lines.slice(0, 1)), layer('on-the-way', lines.slice(1)), layer('text', words)];
}
