import type { Place } from '../../job/part-edits.ts';
import { useLengths } from '../../lengths.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import { choosing } from './chosen.ts';
import { MeasureForm } from './measure-form.tsx';
import { type Bench, pointTo } from './touch.ts';

/** What the next taps on the drawing do, said before and while they do it. */
export function TraceTools({ bench, place }: { readonly bench: Bench; readonly place: Place }) {
  const { looking, look } = bench;
  const { tool, chosen } = looking;
  const onRun = chosen?.kind === 'run';
  if (tool.kind === 'trace') {
    const arc = tool.arc !== 'no';
    return (
      <>
        <p class="hint">{arc ? words.arcHint : words.traceHint}</p>
        <div class="row">
          <button
            type="button"
            aria-pressed={arc}
            disabled={!onRun}
            onClick={() => look({ tool: { kind: 'trace', arc: arc ? 'no' : 'next' } })}
          >
            {words.arc}
          </button>
          <button type="button" onClick={() => look({ tool: choosing, said: '' })}>
            {words.stop}
          </button>
        </div>
        <TypedPoint bench={bench} />
      </>
    );
  }
  if (tool.kind === 'circle') {
    return (
      <>
        <p class="hint">{words.circleHint(3 - tool.through.length)}</p>
        <div class="row">
          <button type="button" onClick={() => look({ tool: choosing, said: '' })}>
            {words.stop}
          </button>
        </div>
        <TypedPoint bench={bench} />
      </>
    );
  }
  return (
    <div class="row">
      {place.list === 'sections' && (
        <button
          type="button"
          onClick={() => look({ tool: { kind: 'trace', arc: 'no' }, chosen: onRun ? chosen : null, said: '' })}
        >
          {onRun ? words.traceGoesOn : words.trace}
        </button>
      )}
      <button type="button" onClick={() => look({ tool: { kind: 'circle', through: [] }, chosen: null, said: '' })}>
        {words.circle}
      </button>
    </div>
  );
}

/** The next point by its figures, for those who measured it or use keys alone. */
export function TypedPoint({ bench }: { readonly bench: Bench }) {
  const { read, unit } = useLengths(bench.sheet.job.parts[bench.sheet.file]?.units ?? 'mm');
  const add = (texts: readonly string[]): string | null => {
    const [x = null, y = null] = texts.map((text) => read(text));
    if (x === null || y === null) return words.numberWanted;
    pointTo(bench, [x, y]);
    return null;
  };
  return <MeasureForm fields={['x', 'y']} unit={unit} button={words.addPoint} add={add} />;
}
