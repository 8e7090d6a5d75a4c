/** What an answer can be doubted for. */
export type DoubtCode =
  | 'dowel-offset'
  | 'dowel-rms'
  | 'dowel-spacing'
  | 'dowel-fit'
  | 'hand'
  | 'bolt-offset'
  | 'bolt-lines-up'
  | 'verdict'
  | 'meets-clearance'
  | 'state'
  | 'tolerance'
  | 'shared-depth'
  | 'nearer'
  | 'overlap'
  | 'no-overlap'
  | 'untraced'
  | 'error'
  | 'worst-clearance'
  | 'witness'
  | 'witness-distance'
  | 'moment'
  | 'fouling'
  | 'first-touch'
  | 'foul-area'
  | 'foul-depth'
  | 'end-gap'
  | 'rotating-part'
  | 'cut-what-must-stay'
  | 'wall'
  | 'cutter-reach'
  | 'cut-section'
  | 'cut-outside-metal'
  | 'first-line'
  | 'last-line'
  | 'line-arcs'
  | 'left-too-near'
  | 'cut-area'
  | 'cut-volume'
  | 'cut-mass'
  | 'take-off'
  | 'holds';

/** A figure of an answer that the self-check finds to be otherwise. */
export interface Doubt {
  readonly what: DoubtCode;
  readonly where: 'joint' | 'home' | 'install' | 'rotating' | 'plan';
  readonly text: string;
  /** The figure as the answer has it and as found, mm unless the text says otherwise; null where there is none. */
  readonly claimedMm: number | null;
  readonly foundMm: number | null;
  /** In the joint frame, mm. */
  readonly at?: readonly [number, number];
}

/** What came of a self-check. */
export interface Verification {
  /** Empty: nothing was found against the answer. */
  readonly doubts: readonly Doubt[];
  /** How many points were measured against an outline. */
  readonly looks: number;
}

/** What is known of a doubt besides what and where. */
type Facts = Partial<Pick<Doubt, 'claimedMm' | 'foundMm' | 'at'>>;

export const doubt = (what: DoubtCode, where: Doubt['where'], text: string, facts: Facts = {}): Doubt => ({
  what,
  where,
  text,
  claimedMm: null,
  foundMm: null,
  ...facts,
});

/** A doubt where two figures for the same thing lie farther apart than `withinMm`, or only one of them is there. */
export function differing(
  what: DoubtCode,
  where: Doubt['where'],
  name: string,
  claimedMm: number | null,
  foundMm: number | null,
  withinMm: number,
): Doubt[] {
  const agree =
    claimedMm === null || foundMm === null ? claimedMm === foundMm : Math.abs(claimedMm - foundMm) <= withinMm;
  const figure = (mm: number | null): string => (mm === null ? 'none' : String(mm));
  const text = `${name}: ${figure(claimedMm)} given, ${figure(foundMm)} found.`;
  return agree ? [] : [doubt(what, where, text, { claimedMm, foundMm })];
}
