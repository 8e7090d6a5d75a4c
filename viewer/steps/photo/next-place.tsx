import { useState } from 'preact/hooks';
import type { PartDraft, PictureFile } from '../../../src/model/job-file.ts';
import { outlineWords } from '../../words/outlines.ts';
import { photoWords as words } from '../../words/photo.ts';
import { ChoiceField, NumberField } from '../outlines/fields.tsx';
import type { NextPlace } from './known-places.ts';

interface Props {
  readonly part: PartDraft;
  readonly picture: PictureFile;
  readonly next: NextPlace;
  readonly setNext: (next: NextPlace) => void;
}

const typed = '';

/** Which known place the next tap touches: a hole of the part, or one by its figures. */
export function NextPlaceChoice({ part, picture: { touches }, next, setNext }: Props) {
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
  const shown = (value: number | null): string => (value === null ? '' : String(value));
  return (
    <>
      <ChoiceField
        label={words.next}
        value={next.kind === 'hole' ? next.id : typed}
        choices={[...holes, [typed, words.typedPlace]]}
        onSet={(id) => (id === typed ? put(null, null) : setNext({ kind: 'hole', id }))}
      />
      {next.kind === 'typed' && (
        <div class="pair">
          <NumberField
            label={`x, ${part.units}`}
            value={shown(next.at === null ? x : next.at[0])}
            onSet={(to) => put(to, y)}
          />
          <NumberField
            label={`y, ${part.units}`}
            value={shown(next.at === null ? y : next.at[1])}
            onSet={(to) => put(x, to)}
          />
        </div>
      )}
    </>
  );
}
