import type { Figures } from '../../lengths.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import type { Looking } from './selection.ts';

interface DepthProps {
  readonly depth: readonly [number, number] | undefined;
  readonly figures: Figures;
  readonly set: (depth: [number, number] | undefined) => void;
  readonly look: (changes: Partial<Looking>) => void;
}

/** Both numbers or none; taken over as soon as they make a range. */
export function DepthFields({ depth, figures, set, look }: DepthProps) {
  const take = ({ currentTarget }: Event & { readonly currentTarget: HTMLElement }): void => {
    const texts = [...currentTarget.querySelectorAll('input')].map(({ value }) => value);
    const [from = null, to = null] = texts.map((text, i) => figures.read(text, depth?.[i]));
    const none = texts.every((text) => text.trim() === '');
    const range = from !== null && to !== null && from < to;
    look({ said: none || range ? '' : words.depthWanted });
    if (none) set(undefined);
    else if (range) set([from, to]);
  };
  return (
    <div class="pair" onChange={take}>
      <label class="field">
        <span>{words.from}</span>
        <input
          type="text"
          inputMode="text"
          autocomplete="off"
          defaultValue={figures.text(depth?.[0])}
          key={`from ${depth?.[0]} ${figures.unit}`}
        />
      </label>
      <label class="field">
        <span>{words.to}</span>
        <input
          type="text"
          inputMode="text"
          autocomplete="off"
          defaultValue={figures.text(depth?.[1])}
          key={`to ${depth?.[1]} ${figures.unit}`}
        />
      </label>
      <p class="hint">{words.minusIsProud}</p>
    </div>
  );
}
