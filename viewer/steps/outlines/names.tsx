import type { Vec } from '../../../src/geometry/plane/vec.ts';
import { placedNames, widthOfName } from '../../stage/names.ts';
import type { Size } from '../../stage/view.ts';

interface Name {
  readonly text: string;
  readonly at: Vec;
}

/** Names on a pane, those that matter more first; where there is no room for one it is left out. */
export const Names = ({ names, pane }: { readonly names: readonly Name[]; readonly pane: Size }) => (
  <>
    {placedNames(
      names.map(({ text, at }) => ({ at, widthPx: widthOfName(text) })),
      pane,
    ).map((at, i) =>
      at === null ? null : (
        <text key={`${i} ${names[i]?.text}`} x={at.x} y={at.y}>
          {names[i]?.text}
        </text>
      ),
    )}
  </>
);
