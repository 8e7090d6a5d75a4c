import { useEffect, useRef } from 'preact/hooks';
import type { PartDraft } from '../../../src/files/job-file.ts';
import { photoWords as words } from '../../words/photo.ts';
import { stated } from './stated-error.ts';

interface Props {
  readonly part: PartDraft;
  readonly error: number;
  readonly write: () => void;
  readonly leave: () => void;
}

/** Whether a part's stated tracing error gives way to the picture's. */
export function ErrorQuestion({ part: { name, units, traceError = 0 }, error, write, leave }: Props) {
  const question = words.errorAsked(name, stated(traceError, units), stated(error, units));
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    box.current?.focus({ preventScroll: true });
    box.current?.scrollIntoView({ block: 'start' });
  }, []);
  return (
    <div class="outlines asked" role="alertdialog" aria-label={question} tabIndex={-1} ref={box}>
      <p>{question}</p>
      <div class="row">
        <button type="button" onClick={write}>
          {words.writeError(stated(error, units))}
        </button>
        <button type="button" onClick={leave}>
          {words.keepError(stated(traceError, units))}
        </button>
      </div>
    </div>
  );
}
