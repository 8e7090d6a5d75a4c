import { type Name, placedNames } from '../../stage/names.ts';
import type { Size } from '../../stage/view.ts';

/** Names on a pane, those that matter more first; where there is no room for one it is left out. */
export const Names = ({ names, pane }: { readonly names: readonly Name[]; readonly pane: Size }) => (
  <>
    {placedNames(names, pane).map((at, i) =>
      at === null ? null : (
        <text key={`${i} ${names[i]?.text}`} x={at.x} y={at.y}>
          {names[i]?.text}
        </text>
      ),
    )}
  </>
);
