import type { PartDraft } from '../../../src/files/job-file.ts';
import { Group } from '../../fields.tsx';
import { dowelsOf, withDowel, withPart } from '../../job/part-edits.ts';
import { useLengths } from '../../lengths.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import { sizeOf } from './holes-table.tsx';
import { choosing } from './selection.ts';
import type { TraceContext } from './touch.ts';

/** Whether it is still to be said which holes of a part are its dowels. */
export const asksDowels = (part: PartDraft): boolean => (part.holes ?? []).length >= 2 && dowelsOf(part).length < 2;

/** Which two are the dowels: asked as long as they are not two, and never answered for the builder. */
export function DowelQuestion({ context, part }: { readonly context: TraceContext; readonly part: PartDraft }) {
  const { sheet, looking, look, edit } = context;
  const lengths = useLengths(part.units);
  const taps = looking.tool.kind === 'dowels';
  return (
    <Group name={words.whichDowels}>
      {(part.holes ?? []).map((hole, i) =>
        hole.kind === 'bore' ? null : (
          <button
            key={hole.id}
            type="button"
            aria-pressed={hole.kind === 'dowel'}
            onClick={() => edit((job) => withPart(job, sheet.file, (old) => withDowel(old, i)))}
          >
            {[hole.id, sizeOf(hole, lengths)].filter((text) => text !== '').join(' · ')}
          </button>
        ),
      )}
      <button
        type="button"
        aria-pressed={taps}
        onClick={() => look({ tool: taps ? choosing : { kind: 'dowels' }, chosen: null, said: '' })}
      >
        {words.tapDowels}
      </button>
    </Group>
  );
}
