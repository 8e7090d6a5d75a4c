import { computed, signal } from '@preact/signals';
import { trueBars } from '../../src/drawing/scene/check-bars.ts';
import type { Units } from '../../src/job/lengths.ts';
import type { MarkingRow } from '../../src/markout/marking-row.ts';
import type { CheckReply, PlanReply, Printing } from '../heavy/questions.ts';
import { preferredUnits, preferUnits } from '../preferred-units.ts';
import { lastStop, stopOf } from '../way.ts';
import type { Answers } from './answers.ts';
import type { StepName } from './step-names.ts';

/** Where the reader is in a job, and how what is said of it is read. */
export class Reader {
  readonly #answers: Answers;
  readonly step = signal<StepName>('outlines');
  /** The part that is traced, by the name the job has it under. */
  readonly part = signal('');
  /** The photograph that is set straight now. */
  readonly picture = signal<string | null>(null);
  readonly #units = signal(preferredUnits());
  /** The unit chosen to read lengths in; null shows each file in its own. */
  readonly units = computed(() => this.#units.value);
  /** What was checked, its lengths to be said in that unit; all of it is worked out in millimetres. */
  readonly checked = computed(() => readIn(this.#answers.checked.value, this.#units.value));
  /** How sheets are printed: paper and printer outlast a job, a mirror is asked for anew. */
  readonly printing = signal<Printing>({ paper: 'a4', bars: trueBars, mirrored: false });
  readonly #read = signal<{ readonly row: MarkingRow | null; readonly of: PlanReply | null }>({ row: null, of: null });
  /** The place of the cut edge that was touched to be read; of another plan there is none. */
  readonly reading = computed(() => {
    const { row, of } = this.#read.value;
    return of === this.#answers.planned.value ? row : null;
  });
  readonly #place = signal(Number.POSITIVE_INFINITY);
  /** Where on the way in the moving part stands, in pieces of the curve; who is home stays there when the way changes. */
  readonly place = computed(() => {
    const way = this.#answers.way.value;
    return way === null ? 0 : Math.min(lastStop(way), this.#place.value);
  });
  readonly stop = computed(() => {
    const [way, checked] = [this.#answers.way.value, this.#answers.checked.value];
    return way === null || checked === null ? null : stopOf(way, checked.joint.fit.legs, this.place.value);
  });
  /** What is proved of where the moving part stands now; null until the answer is there. */
  readonly proved = computed(() => {
    const [stop, stands] = [this.stop.value, this.#answers.stands.value];
    return stop !== null && stands?.leg === stop.leg && stands.at === stop.at ? stands : null;
  });

  constructor(answers: Answers) {
    this.#answers = answers;
  }

  /** To the beginning of another job. */
  turnTo(step: StepName, part: string): void {
    this.step.value = step;
    this.part.value = part;
    this.picture.value = null;
    this.printing.value = { ...this.printing.peek(), mirrored: false };
    this.#place.value = Number.POSITIVE_INFINITY;
  }

  /** Moves the moving part to a place of the way in. */
  moveTo(place: number): void {
    const way = this.#answers.way.peek();
    const isHome = way === null || place >= lastStop(way);
    this.#place.value = isHome ? Number.POSITIVE_INFINITY : Math.max(0, place);
  }

  read(row: MarkingRow | null): void {
    this.#read.value = { row, of: this.#answers.planned.peek() };
  }

  /** Shows lengths in one unit, or each file's in its own; the files stay as they are. */
  readLengthsIn(units: Units | null): void {
    preferUnits(units);
    this.#units.value = units;
  }
}

const readIn = (checked: CheckReply | null, units: Units | null): CheckReply | null => {
  if (checked === null || units === null) return checked;
  const { joint } = checked;
  return { ...checked, joint: { ...joint, fit: { ...joint.fit, units } } };
};
