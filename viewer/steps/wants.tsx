import type { App } from '../app.ts';
import type { Want } from '../words/wants.ts';
import { words } from '../words.ts';

/** More than these nobody reads at once. */
const mostShown = 4;

/** What is needed next; a touch goes where it is done. */
export function Wants({ app: { reader }, wants }: { readonly app: App; readonly wants: readonly Want[] }) {
  if (wants.length === 0) return null;
  return (
    <ul class="wants" aria-label={words.wanted}>
      {wants.slice(0, mostShown).map(({ text, at: { step, part } }) => {
        const isHere = step === reader.step.value && (part === null || part === reader.part.value);
        return (
          <li key={text}>
            {isHere ? (
              text
            ) : (
              <button
                type="button"
                onClick={() => {
                  reader.step.value = step;
                  if (part !== null) reader.part.value = part;
                }}
              >
                {text}
              </button>
            )}
          </li>
        );
      })}
    </ul>
  );
}
