import { useState } from 'preact/hooks';
import { words } from './words.ts';

/** All there is to say, put into words only while it is read. */
export function InFull({ text }: { readonly text: () => string }) {
  const [isOpen, open] = useState(false);
  return (
    <details onToggle={({ currentTarget }) => open(currentTarget.open)}>
      <summary>{words.inFull}</summary>
      {isOpen ? <pre>{text()}</pre> : null}
    </details>
  );
}
