import type { WallReading } from '../../job/part-edits.ts';
import { withoutWallReading, withPart, withWallReading } from '../../job/part-edits.ts';
import { type Figures, useLengths } from '../../lengths.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import { MeasureForm } from './measure-form.tsx';
import type { TraceContext } from './touch.ts';

const fields = ['x', 'y', words.wallDepth, words.wall, words.wallError] as const;

/** Thicknesses of wall measured here and there. */
export function WallsTable({ context: { sheet, edit } }: { readonly context: TraceContext }) {
  const part = sheet.job.parts[sheet.file];
  const lengths = useLengths(part?.units ?? 'mm');
  const { text, unit } = lengths;
  return (
    <div class="details">
      <ul class="readings">
        {(part?.wallReadings ?? []).map(({ at, depth, wall, error }, i) => (
          <li key={`${i}`}>
            <span>{words.wallLine(text(wall), error === undefined ? null : text(error), unit)}</span>
            <span>{words.wallPlace(text(at[0]), text(at[1]), text(depth))}</span>
            <button
              type="button"
              aria-label={words.removeWall(i + 1)}
              onClick={() => edit((job) => withPart(job, sheet.file, (old) => withoutWallReading(old, i)))}
            >
              ×
            </button>
          </li>
        ))}
      </ul>
      <MeasureForm
        fields={fields}
        unit={unit}
        button={words.addWall}
        add={(texts) => {
          const reading = readingOf(texts, lengths);
          if (reading === null) return words.numberWanted;
          edit((job) => withPart(job, sheet.file, (old) => withWallReading(old, reading)));
          return null;
        }}
      />
    </div>
  );
}

function readingOf(texts: readonly string[], { read }: Figures): WallReading | null {
  const [x = null, y = null, depth = null, wall = null, error = null] = texts.map((text) => read(text));
  if (x === null || y === null || depth === null || wall === null || wall <= 0) return null;
  return { at: [x, y], depth, wall, ...(error === null ? {} : { error }) };
}
