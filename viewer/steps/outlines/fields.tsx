import type { ComponentChildren } from 'preact';
import { useTyping } from '../../typing.ts';

/** A number as someone writes it, with a point or a comma; null where it is none. */
export function numberIn(text: string): number | null {
  const plain = text.trim().replace(',', '.');
  const value = Number(plain);
  return plain === '' || !Number.isFinite(value) ? null : value;
}

interface NumberProps {
  readonly label: string;
  readonly value: string;
  /** The label is only for screen readers: a table's head says it. */
  readonly bare?: boolean;
  /** What it may be; what it may not is put back as it was. */
  readonly fits?: (value: number) => boolean;
  readonly onSet: (value: number) => void;
  /** Called where the field is emptied; without it an empty field is put back. */
  readonly onClear?: (() => void) | undefined;
}

/** A field for one number, taken over when it is left or entered. */
export function NumberField({ label, value, bare = false, fits = () => true, onSet, onClear }: NumberProps) {
  const typing = useTyping(value);
  const take = ({ currentTarget }: Event & { readonly currentTarget: HTMLInputElement }): void => {
    const number = numberIn(currentTarget.value);
    if (number !== null && fits(number)) onSet(number);
    else if (currentTarget.value.trim() === '' && onClear !== undefined) onClear();
    else currentTarget.value = value;
    typing.done();
  };
  const input = (
    <input
      type="text"
      inputMode="decimal"
      autocomplete="off"
      value={typing.value}
      onInput={typing.onInput}
      aria-label={bare ? label : undefined}
      onChange={take}
    />
  );
  return bare ? input : <Labelled label={label}>{input}</Labelled>;
}

interface TextProps {
  readonly label: string;
  readonly value: string;
  readonly bare?: boolean;
  readonly list?: string;
  readonly onSet: (value: string) => void;
}

export function TextField({ label, value, bare = false, list, onSet }: TextProps) {
  const typing = useTyping(value);
  const input = (
    <input
      type="text"
      autocomplete="off"
      value={typing.value}
      onInput={typing.onInput}
      list={list}
      aria-label={bare ? label : undefined}
      onChange={({ currentTarget }) => {
        onSet(currentTarget.value.trim());
        // a name that is not taken on is put back
        currentTarget.value = value;
        typing.done();
      }}
    />
  );
  return bare ? input : <Labelled label={label}>{input}</Labelled>;
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly bare?: boolean;
  readonly choices: readonly (readonly [T, string])[];
  readonly onSet: (value: T) => void;
}

export function ChoiceField<T extends string>({ label, value, bare = false, choices, onSet }: ChoiceProps<T>) {
  const select = (
    <select
      value={value}
      aria-label={bare ? label : undefined}
      onChange={({ currentTarget }) => onSet(currentTarget.value as T)}
    >
      {choices.map(([key, name]) => (
        <option key={key} value={key}>
          {name}
        </option>
      ))}
    </select>
  );
  return bare ? select : <Labelled label={label}>{select}</Labelled>;
}

export function Labelled({ label, children }: { readonly label: string; readonly children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noLabelWithoutControl: the control is what it is given
    <label class="field">
      <span>{label}</span>
      {children}
    </label>
  );
}
