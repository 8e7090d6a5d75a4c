import type { ComponentChildren } from 'preact';
import { useTyping } from './typing.ts';

interface NumberProps {
  readonly label: string;
  /** Undefined shows an empty field. */
  readonly value: number | undefined;
  readonly unit?: string;
  readonly min?: number;
  readonly placeholder?: string;
  readonly hidesLabel?: boolean;
  /** Undefined where the field was emptied and that is allowed. */
  readonly onValue: (value: number | undefined) => void;
  readonly mayBeEmpty?: boolean;
}

/** A number typed exactly, with a point or a comma; what is no number is shown as wrong and changes nothing. */
export function NumberField(props: NumberProps) {
  const { label, value, unit = '', min, placeholder = '', hidesLabel = false, onValue, mayBeEmpty = false } = props;
  const typing = useTyping(value === undefined ? '' : String(value));
  const take = (event: Event): void => {
    const field = event.currentTarget as HTMLInputElement;
    const text = field.value.trim().replace(',', '.').replace('−', '-');
    const number = text === '' ? undefined : Number(text);
    const isWrong =
      number === undefined ? !mayBeEmpty : !Number.isFinite(number) || (min !== undefined && number < min);
    field.setAttribute('aria-invalid', String(isWrong));
    if (isWrong) return;
    typing.done();
    if (number !== value) onValue(number);
  };
  return (
    <label class="number">
      <span class={hidesLabel ? 'unseen' : ''}>{label}</span>
      <span class="entry">
        <input
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={typing.value}
          onInput={typing.onInput}
          placeholder={placeholder}
          onChange={take}
        />
        {unit === '' ? null : <span class="unit">{unit}</span>}
      </span>
    </label>
  );
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T | '';
  readonly options: readonly (readonly [value: T, text: string])[];
  readonly hidesLabel?: boolean;
  readonly onValue: (value: T) => void;
}

export function Choice<T extends string>({ label, value, options, hidesLabel = false, onValue }: ChoiceProps<T>) {
  return (
    <label class="choice">
      <span class={hidesLabel ? 'unseen' : ''}>{label}</span>
      <select value={value} onChange={(event) => onValue(event.currentTarget.value as T)}>
        {value === '' ? (
          <option value="" disabled>
            …
          </option>
        ) : null}
        {options.map(([option, text]) => (
          <option key={option} value={option}>
            {text}
          </option>
        ))}
      </select>
    </label>
  );
}

interface TickProps {
  readonly label: string;
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
}

export function Tick({ label, on, onChange }: TickProps) {
  return (
    <label class="tick">
      <input type="checkbox" checked={on} onChange={(event) => onChange(event.currentTarget.checked)} />
      {label}
    </label>
  );
}

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
