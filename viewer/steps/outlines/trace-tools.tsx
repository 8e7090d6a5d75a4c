import type { Place } from '../../job/part-edits.ts';
import { useLengths } from '../../lengths.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import { MeasureForm } from './measure-form.tsx';
import { choosing } from './selection.ts';
import { pointTo, type TraceContext } from './touch.ts';

/** What the next taps on the drawing do, said before and while they do it. */
export function TraceTools({ context, place }: { readonly context: TraceContext; readonly place: Place }) {
  const { looking, look } = context;
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
        <TypedPoint context={context} />
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
        <TypedPoint context={context} />
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
export function TypedPoint({ context }: { readonly context: TraceContext }) {
  const { read, unit } = useLengths(context.sheet.job.parts[context.sheet.file]?.units ?? 'mm');
  const add = (texts: readonly string[]): string | null => {
    const [x = null, y = null] = texts.map((text) => read(text));
    if (x === null || y === null) return words.numberWanted;
    pointTo(context, [x, y]);
    return null;
  };
  return <MeasureForm fields={['x', 'y']} unit={unit} button={words.addPoint} add={add} />;
}
