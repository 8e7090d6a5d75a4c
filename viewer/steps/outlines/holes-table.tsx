import type { HoleFile } from '../../../src/model/part-file.ts';
import { holeRenamed, withHoleChanged, withoutHole, withPart } from '../../job/part-edits.ts';
import { coordinate, outlineWords as words } from '../../words/outlines.ts';
import { ChoiceField, NumberField, TextField } from './fields.tsx';
import type { Bench } from './touch.ts';

const kinds = Object.entries(words.holeKinds) as [HoleFile['kind'], string][];

/** Every hole as one line of figures to type over. */
export function HolesTable({ bench }: { readonly bench: Bench }) {
  const { sheet, looking, look, edit } = bench;
  const part = sheet.job.parts[sheet.file];
  const holes = part?.holes ?? [];
  const units = part?.units ?? 'mm';
  const set = (i: number, changes: Partial<Omit<HoleFile, 'id'>>): void =>
    edit((job) => withPart(job, sheet.file, (old) => withHoleChanged(old, i, changes)));
  const shown = (value: number | undefined): string => (value === undefined ? '' : coordinate(value, units));
  const rename = (i: number, id: string): void => {
    look({ said: holes.some((hole, k) => k !== i && hole.id === id) ? words.nameTaken : '' });
    edit((job) => holeRenamed(job, sheet.file, i, id));
  };
  const { tool } = looking;
  return (
    <div class="details">
      {holes.map((hole, i) => (
        <fieldset key={hole.id} class="hole-row" onFocusIn={() => look({ chosen: { kind: 'hole', hole: i } })}>
          <legend>{hole.id}</legend>
          <TextField label={words.holeName} value={hole.id} onSet={(id) => rename(i, id)} />
          <ChoiceField label={words.holeKind} value={hole.kind} choices={kinds} onSet={(kind) => set(i, { kind })} />
          <NumberField label={`x ${units}`} value={shown(hole.at[0])} onSet={(x) => set(i, { at: [x, hole.at[1]] })} />
          <NumberField label={`y ${units}`} value={shown(hole.at[1])} onSet={(y) => set(i, { at: [hole.at[0], y] })} />
          <NumberField
            label={words.diameter}
            value={shown(hole.diameter)}
            fits={(value) => value > 0}
            onSet={(diameter) => set(i, { diameter })}
            onClear={() => set(i, { diameter: undefined })}
          />
          {hole.kind === 'dowel' ? (
            <NumberField
              label={words.proud}
              value={shown(hole.proud)}
              fits={(value) => value >= 0}
              onSet={(proud) => set(i, { proud })}
              onClear={() => set(i, { proud: undefined })}
            />
          ) : (
            <TextField
              label={words.thread}
              value={hole.thread ?? ''}
              onSet={(thread) => set(i, { thread: thread || undefined })}
            />
          )}
          <button
            type="button"
            class="quiet"
            onClick={() => {
              edit((job) => withoutHole(job, sheet.file, i));
              look({ chosen: null });
            }}
          >
            {words.removeHole(hole.id)}
          </button>
        </fieldset>
      ))}
      <div class="row">
        <button
          type="button"
          aria-pressed={tool.kind === 'hole'}
          onClick={() => look({ tool: { kind: tool.kind === 'hole' ? 'choose' : 'hole' }, chosen: null })}
        >
          {words.addHole}
        </button>
      </div>
      {tool.kind === 'hole' && <p class="hint">{words.addHoleHint}</p>}
    </div>
  );
}
