import type { Place } from '../../job/part-edits.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import { choosing } from './chosen.ts';
import type { Bench } from './touch.ts';

/** What the next taps on the drawing do, said before and while they do it. */
export function TraceTools({ bench: { looking, look }, place }: { readonly bench: Bench; readonly place: Place }) {
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
