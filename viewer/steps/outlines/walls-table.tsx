import type { WallReading } from '../../job/part-edits.ts';
import { withoutWallReading, withPart, withWallReading } from '../../job/part-edits.ts';
import { coordinate, outlineWords as words } from '../../words/outlines.ts';
import { numberIn } from './fields.tsx';
import { MeasureForm } from './measure-form.tsx';
import type { Bench } from './touch.ts';

const fields = ['x', 'y', words.wallDepth, words.wall, words.wallError] as const;

/** Thicknesses of wall measured here and there. */
export function WallsTable({ bench: { sheet, edit } }: { readonly bench: Bench }) {
  const part = sheet.job.parts[sheet.file];
  const units = part?.units ?? 'mm';
  return (
    <div class="details">
      <ul class="readings">
        {(part?.wallReadings ?? []).map(({ at, depth, wall, error }, i) => (
          <li key={`${i}`}>
            <span>
              {words.wallLine(coordinate(wall, units), error === undefined ? null : coordinate(error, units), units)}
            </span>
            <span>{words.wallPlace(coordinate(at[0], units), coordinate(at[1], units), coordinate(depth, units))}</span>
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
        button={words.addWall}
        add={(texts) => {
          const reading = readingOf(texts);
          if (reading === null) return words.numberWanted;
          edit((job) => withPart(job, sheet.file, (old) => withWallReading(old, reading)));
          return null;
        }}
      />
    </div>
  );
}

function readingOf(texts: readonly string[]): WallReading | null {
  const [x = null, y = null, depth = null, wall = null, error = null] = texts.map(numberIn);
  if (x === null || y === null || depth === null || wall === null || wall <= 0) return null;
  return { at: [x, y], depth, wall, ...(error === null ? {} : { error }) };
}
