import { useState } from 'preact/hooks';
import { outlineWords as words } from '../../words/outlines.ts';

interface Props {
  readonly fields: readonly string[];
  /** What the lengths among them are typed in. */
  readonly unit: string;
  readonly button: string;
  /** Takes what was typed; gives back why it cannot, or null. */
  readonly add: (texts: readonly string[]) => string | null;
}

/** A row of measures that are typed and added together. */
export function MeasureForm({ fields, unit, button, add }: Props) {
  const [said, say] = useState('');
  const take = (event: Event & { readonly currentTarget: HTMLFormElement }): void => {
    event.preventDefault();
    const form = event.currentTarget;
    const refused = add([...form.querySelectorAll('input')].map(({ value }) => value));
    say(refused ?? '');
    if (refused === null) form.reset();
  };
  return (
    <form class="measures" onSubmit={take}>
      {fields.map((field) => (
        <label key={field} class="field">
          <span>{field}</span>
          <input type="text" inputMode="text" autocomplete="off" />
        </label>
      ))}
      <span class="unit">{words.lengthsIn(unit)}</span>
      <button type="submit">{button}</button>
      {said !== '' && (
        <p class="said" role="alert">
          {said}
        </p>
      )}
    </form>
  );
}
