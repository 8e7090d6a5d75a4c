import '../at-bench.css';
import { useEffect, useState } from 'preact/hooks';
import type { Units } from '../../src/job/lengths.ts';
import type { LengthName, RowName } from '../../src/stack/stack.ts';
import { housingFlanges } from '../../src/trade/flange-patterns.ts';
import { materials } from '../../src/trade/materials.ts';
import { lengthNames } from '../../src/words/stack-measuring.ts';
import { rowNames } from '../../src/words/stack-text.ts';
import type { App } from '../app.ts';
import { ChoiceField, Group, NumberField, TextField } from '../fields.tsx';
import { InFull } from '../in-full.tsx';
import {
  type BenchForm,
  benchForms,
  boreLengths,
  type Dialled,
  dialField,
  dialled,
  holeLengths,
} from '../job/bench-entries.ts';
import { useLengths } from '../lengths.ts';
import { benchWords as words } from '../words/at-bench.ts';

interface Props {
  readonly app: App;
  readonly units: Units;
}

/** What is worked out beside the job: a tapped hole, the bore by a dial, lengths along the crank. */
export const AtBench = ({ app, units }: Props) => (
  <>
    {benchForms.map((form) => (
      <Form key={form} app={app} units={units} form={form} />
    ))}
  </>
);

const fieldsOf = { hole: HoleFields, bore: BoreFields, stack: StackFields } as const;

/** A form that is there while it is open, and what is said of what stands in it. */
function Form({ app, units, form }: Props & { readonly form: BenchForm }) {
  const [isOpen, open] = useState(false);
  return (
    <details onToggle={({ currentTarget }) => open(currentTarget.open)}>
      <summary>{words.forms[form]}</summary>
      {isOpen ? <Opened app={app} units={units} form={form} /> : null}
    </details>
  );
}

function Opened({ app, units, form }: Props & { readonly form: BenchForm }) {
  const { atBench } = app.answers;
  const entries = atBench.entriesOf(form);
  useEffect(() => atBench.ask(form, units), [entries, units]);
  const Fields = fieldsOf[form];
  return (
    <>
      <div class="bench-fields">
        <Fields entries={entries} enter={(field, text) => atBench.enter(form, field, text)} />
      </div>
      <Said app={app} form={form} />
      <p>{words.kept}</p>
      <button type="button" onClick={() => atBench.clear(form)}>
        {words.clear}
      </button>
    </>
  );
}

const states = { goes: 'clear', not: 'fouls', undecided: 'undecided' } as const;

function Said({ app, form }: { readonly app: App; readonly form: BenchForm }) {
  const told = app.answers.atBench.toldOf(form);
  if (told === null) return null;
  if (told.kind === 'refused')
    return (
      <ul role="alert">
        {told.findings.map((finding) => (
          <li key={finding.at}>{words.refused(form, finding)}</li>
        ))}
      </ul>
    );
  return (
    <div role="status">
      <p data-state={states[told.verdict]}>{told.line}</p>
      <InFull text={() => told.text} />
    </div>
  );
}

interface FieldsProps {
  readonly entries: Readonly<Record<string, string>>;
  readonly enter: (field: string, text: string) => void;
}

interface LengthProps extends FieldsProps {
  readonly field: string;
  readonly label: string;
  readonly bare?: boolean;
  readonly sign?: 'any' | 'not-negative';
}

/** A length, kept in mm whatever unit it is typed in. */
function Length({ entries, enter, field, label, bare = false, sign = 'not-negative' }: LengthProps) {
  const figures = useLengths('mm');
  const { [field]: kept } = entries;
  return (
    <NumberField
      label={label}
      bare={bare}
      figures={figures}
      value={kept === undefined ? undefined : Number(kept)}
      {...(sign === 'any' ? {} : { fits: (mm: number) => mm >= 0 })}
      onSet={(mm) => enter(field, String(Number(mm.toFixed(6))))}
      onClear={() => enter(field, '')}
    />
  );
}

function HoleFields(props: FieldsProps) {
  const { entries, enter } = props;
  return (
    <>
      {(['thread', 'was'] as const).map((field) => (
        <TextField
          key={field}
          label={words.hole[field]}
          value={entries[field] ?? ''}
          placeholder={field === 'thread' ? words.threads : ''}
          onSet={(text) => enter(field, text)}
        />
      ))}
      <ChoiceField
        label={words.hole.material}
        value={entries.material ?? 'none'}
        choices={[['none', words.unnamedMaterial], ...materials.map(({ name }) => [name, name] as const)]}
        onSet={(name) => enter('material', name === 'none' ? '' : name)}
      />
      {holeLengths.map((field) => (
        <Length key={field} {...props} field={field} label={words.hole[field]} />
      ))}
      <TextField
        label={words.hole.have}
        value={entries.have ?? ''}
        placeholder={words.drills}
        onSet={(text) => enter('have', text)}
      />
    </>
  );
}

function BoreFields(props: FieldsProps) {
  const { entries, enter } = props;
  return (
    <>
      <p>{words.dialHow}</p>
      {(['bore', 'face'] as const).map((of) => (
        <Readings key={of} {...props} of={of} />
      ))}
      {boreLengths.map((field) => (
        <Length key={field} {...props} field={field} label={words.bore[field]} />
      ))}
      <ChoiceField
        label={words.bore.flange}
        value={entries.flange ?? 'none'}
        choices={[
          ['none', words.noFlange],
          ...housingFlanges.map(({ number }) => [words.flange(number), words.flange(number)] as const),
        ]}
        onSet={(flange) => enter('flange', flange === 'none' ? '' : flange)}
      />
    </>
  );
}

const Readings = ({ of, ...props }: FieldsProps & { readonly of: Dialled }) => (
  <Group name={words.bore[of]}>
    {dialled.map((place) => (
      <Length key={place} {...props} field={dialField(of, place)} label={words.place(place)} sign="any" />
    ))}
  </Group>
);

/** Lengths that may lie on either side of what they are measured from. */
const signed: readonly string[] = ['flangeProud', 'pilotMouth', 'hubFrom'];

function StackFields(props: FieldsProps) {
  return (
    <>
      <p>{words.stackHow}</p>
      <Length {...props} field="error" label={words.error} />
      {(Object.keys(lengthNames) as LengthName[]).map((name) => (
        <div class="measured" key={name}>
          <Length
            {...props}
            field={`length.${name}`}
            label={lengthNames[name]}
            sign={signed.includes(name) ? 'any' : 'not-negative'}
          />
          <span aria-hidden="true">±</span>
          <Length {...props} bare field={`error.${name}`} label={words.errorOf(lengthNames[name])} />
        </div>
      ))}
      <Group name={words.wantedGroup}>
        {(Object.keys(rowNames) as RowName[]).map((row) => (
          <Length key={row} {...props} field={`wanted.${row}`} label={words.wanted(row)} />
        ))}
      </Group>
    </>
  );
}
