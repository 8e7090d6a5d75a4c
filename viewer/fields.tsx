import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { type Figures, plainFigures } from './lengths.ts';
import { useTyping } from './typing.ts';

interface LabelledProps {
  readonly label: string;
  /** The label is only for screen readers: what stands round the field says it. */
  readonly bare?: boolean;
}

interface NumberProps extends LabelledProps {
  /** Undefined shows an empty field. */
  readonly value: number | undefined;
  readonly figures?: Figures;
  readonly placeholder?: string;
  /** What it may be. */
  readonly fits?: (value: number) => boolean;
  /** Said at the field while it holds what it may not. */
  readonly wrong?: string;
  readonly onSet: (value: number) => void;
  /** Called where the field is emptied; without it an empty field is wrong. */
  readonly onClear?: (() => void) | undefined;
}

const plain = plainFigures();

/** A number, taken over when it is left or entered; what it may not be is shown as wrong and changes nothing. */
export function NumberField(props: NumberProps) {
  const { label, bare = false, value, figures = plain, placeholder, fits, wrong, onSet, onClear } = props;
  const typing = useTyping(figures.text(value));
  const [saysWrong, setSaysWrong] = useState(false);
  const take = ({ currentTarget }: Event & { readonly currentTarget: HTMLInputElement }): void => {
    const number = figures.read(currentTarget.value, value);
    const clears = currentTarget.value.trim() === '' && onClear !== undefined;
    const isWrong = !clears && (number === null || fits?.(number) === false);
    currentTarget.setAttribute('aria-invalid', String(isWrong));
    setSaysWrong(isWrong);
    if (isWrong) return;
    typing.done();
    if (clears && value !== undefined) onClear();
    else if (number !== null && number !== value) onSet(number);
  };
  const input = (
    <input
      type="text"
      // a number pad has no minus
      inputMode={fits === undefined ? 'text' : 'decimal'}
      autocomplete="off"
      value={typing.value}
      onInput={typing.onInput}
      placeholder={placeholder}
      aria-label={bare ? label : undefined}
      onChange={take}
    />
  );
  if (bare) return input;
  return (
    <Labelled label={label}>
      <span class="entry">
        {input}
        {figures.unit === '' ? null : <span class="unit">{figures.unit}</span>}
      </span>
      {saysWrong && wrong !== undefined ? (
        <span class="wrong" role="alert">
          {wrong}
        </span>
      ) : null}
    </Labelled>
  );
}

interface TextProps extends LabelledProps {
  readonly value: string;
  readonly placeholder?: string;
  readonly list?: string;
  readonly onSet: (value: string) => void;
}

export function TextField({ label, value, bare = false, placeholder, list, onSet }: TextProps) {
  const typing = useTyping(value);
  const input = (
    <input
      type="text"
      autocomplete="off"
      value={typing.value}
      onInput={typing.onInput}
      list={list}
      placeholder={placeholder}
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

interface ChoiceProps<T extends string> extends LabelledProps {
  /** Empty where nothing is chosen yet. */
  readonly value: T | '';
  readonly choices: readonly (readonly [value: T, text: string])[];
  readonly onSet: (value: T) => void;
}

export function ChoiceField<T extends string>({ label, value, bare = false, choices, onSet }: ChoiceProps<T>) {
  const isOpen = choices.every(([choice]) => choice !== value);
  const select = (
    <select
      value={value}
      aria-label={bare ? label : undefined}
      onChange={({ currentTarget }) => onSet(currentTarget.value as T)}
    >
      {isOpen ? (
        <option value={value} disabled>
          …
        </option>
      ) : null}
      {choices.map(([choice, text]) => (
        <option key={choice} value={choice}>
          {text}
        </option>
      ))}
    </select>
  );
  return bare ? select : <Labelled label={label}>{select}</Labelled>;
}

const Labelled = ({ label, children }: { readonly label: string; readonly children: ComponentChildren }) => (
  // biome-ignore lint/a11y/noLabelWithoutControl: the control is what it is given
  <label class="field">
    <span>{label}</span>
    {children}
  </label>
);

interface TickProps {
  readonly label: string;
  /** What it is called where the label alone does not tell it from others. */
  readonly name?: string;
  readonly on: boolean;
  readonly onSet: (on: boolean) => void;
}

export const Tick = ({ label, name, on, onSet }: TickProps) => (
  <label class="tick">
    <input
      type="checkbox"
      aria-label={name}
      checked={on}
      onChange={({ currentTarget }) => onSet(currentTarget.checked)}
    />
    {label}
  </label>
);

interface GroupProps {
  readonly name: string;
  readonly children: ComponentChildren;
}

export const Group = ({ name, children }: GroupProps) => (
  <fieldset>
    <legend>{name}</legend>
    {children}
  </fieldset>
);
