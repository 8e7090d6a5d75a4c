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
  | 'error'
  | 'worst-clearance'
  | 'depth-never-shared'
  | 'depth-shared'
  | 'witness'
  | 'witness-section'
  | 'witness-depth'
  | 'witness-place'
  | 'witness-distance'
  | 'moment'
  | 'nearer'
  | 'no-overlap'
  | 'fouling-interval'
  | 'fouling-ends'
  | 'overlap-outside'
  | 'first-touch'
  | 'undecided-without-cause'
  | 'untraced'
  | 'foul-area'
  | 'foul-depth'
  | 'end-gap'
  | 'rotating-part'
  | 'cut-section'
  | 'cut-outside-metal'
  | 'first-line'
  | 'last-line'
  | 'left-too-near'
  | 'cut-area'
  | 'cut-volume'
  | 'cut-mass'
  | 'take-off'
  | 'holds';

/** A figure of an answer that the self-check measures differently. */
export interface Doubt {
  readonly what: DoubtCode;
  readonly where: 'joint' | 'home' | 'install' | 'rotating' | 'plan';
  readonly text: string;
  /** The figure as the answer has it and as found, mm unless the text says otherwise; null where it is none. */
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
