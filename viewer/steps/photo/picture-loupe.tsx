import type { Vec } from '../../../src/geometry/plane/vec.ts';
import type { Homography } from '../../../src/intake/photo/homography.ts';
import type { Pane } from '../../stage/pane.ts';
import { type Beneath, matrixNear } from '../../stage/picture-under.ts';
import type { View } from '../../stage/view.ts';
import { Loupe } from '../outlines/loupe.tsx';

interface Props {
  readonly at: Vec;
  readonly beneath: Beneath;
  readonly fromPlane: Homography;
  readonly view: View;
  readonly pane: Pane;
  /** The drawing that lies over the picture, by its id; none where the picture lies alone. */
  readonly of?: string;
  readonly largerBy?: number;
}

/** A lens over a picture, and over what is drawn on it. */
export function PictureLoupe({ at, beneath, fromPlane, view, pane, of, largerBy }: Props) {
  const transform = matrixNear(beneath, fromPlane, view, at);
  return (
    <Loupe at={at} of={of} room={pane.element} largerBy={largerBy}>
      {transform !== null && (
        <image
          href={beneath.url}
          width={beneath.size.width}
          height={beneath.size.height}
          transform={transform}
          opacity={beneath.strength}
        />
      )}
    </Loupe>
  );
}
