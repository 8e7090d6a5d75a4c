import { useState } from 'preact/hooks';
import type { PartDraft, PictureFile } from '../../../src/files/job-file.ts';
import { ChoiceField, NumberField } from '../../fields.tsx';
import { useLengths } from '../../lengths.ts';
import { outlineWords } from '../../words/outlines.ts';
import { photoWords as words } from '../../words/photo.ts';
import { isByDistance, type NextPlace } from './known-places.ts';

interface Props {
  readonly part: PartDraft;
  readonly picture: PictureFile;
  readonly next: NextPlace;
  readonly setNext: (next: NextPlace) => void;
}

const typed = '';

/** Which known place the next tap touches: a hole of the part, or one by its figures. */
export function NextPlaceChoice({ part, picture, next, setNext }: Props) {
  const { touches, squareOn } = picture;
  const figures = useLengths(part.units);
  const [x, setX] = useState<number | null>(null);
  const [y, setY] = useState<number | null>(null);
  const isTouched = (id: string): boolean => touches.some(({ hole }) => hole === id);
  const holes = (part.holes ?? []).map(
    ({ id, kind }) => [id, words.holeAt(id, outlineWords.holeKinds[kind], isTouched(id))] as const,
  );
  const put = (nextX: number | null, nextY: number | null): void => {
    setX(nextX);
    setY(nextY);
    setNext({ kind: 'typed', at: nextX === null || nextY === null ? null : [nextX, nextY] });
  };
  return (
    <>
      <ChoiceField
        label={words.next}
        value={next.kind === 'hole' ? next.id : typed}
        choices={[...holes, [typed, words.typedPlace]]}
        onSet={(id) => (id === typed ? put(null, null) : setNext({ kind: 'hole', id }))}
      />
      {next.kind === 'typed' && squareOn && touches.length === 0 && <p class="hint">{words.firstIsOrigin}</p>}
      {next.kind === 'typed' && isByDistance(picture) && (
        <NumberField
          label={words.distance}
          figures={figures}
          value={next.at === null ? undefined : next.at[0] - (touches[0]?.at[0] ?? 0)}
          fits={(value) => value > 0}
          onSet={(distance) => put((touches[0]?.at[0] ?? 0) + distance, touches[0]?.at[1] ?? 0)}
        />
      )}
      {next.kind === 'typed' && !(squareOn && touches.length === 0) && !isByDistance(picture) && (
        <div class="pair">
          <NumberField
            label="x"
            figures={figures}
            value={next.at === null ? (x ?? undefined) : next.at[0]}
            onSet={(to) => put(to, y)}
          />
          <NumberField
            label="y"
            figures={figures}
            value={next.at === null ? (y ?? undefined) : next.at[1]}
            onSet={(to) => put(x, to)}
          />
        </div>
      )}
    </>
  );
}
