/**
 * How everything on a drawing looks, in one place. Line kinds and widths as ISO 128: wide continuous for outlines one
 * sees, narrow dashed for those behind, long-dash-dot for centre lines, long-dash-double-dot for other positions of a
 * part that moves, narrow lines at 45° for hatching. Every role is told from every other by its line or its hatching
 * too, so that nothing is lost on a black and white print.
 */

/** What a mark stands for. */
export type Role =
  | 'room'
  | 'fixed-metal'
  | 'fixed'
  | 'fixed-behind'
  | 'as-it-is'
  | 'traced'
  | 'hollow'
  | 'do-not-cut'
  | 'rotating'
  | 'moving-beyond'
  | 'moving'
  | 'on-the-way'
  | 'relief'
  | 'relief-hatch'
  | 'foul'
  | 'foul-stretch'
  | 'clearance-curve'
  | 'clearance-after'
  | 'error-band'
  | 'asked'
  | 'first-line'
  | 'last-line'
  | 'centre-line'
  | 'hole'
  | 'dowel'
  | 'moving-hole'
  | 'mating-face'
  | 'witness'
  | 'first-touch'
  | 'detail-ring'
  | 'leader'
  | 'frame'
  | 'scale-block'
  | 'text'
  | 'moving-text';

export type LineKind = 'continuous' | 'dashed' | 'dotted' | 'long-dash-dot' | 'long-dash-double-dot' | 'long-dash-dash';

export type Ink = 'black' | 'grey' | 'metal' | 'blue' | 'sky' | 'green' | 'yellow' | 'vermillion' | 'purple' | 'paper';

export interface Style {
  readonly line: { readonly ink: Ink; readonly kind: LineKind; readonly pens: number } | null;
  /** What closed marks are filled with; text takes its ink. */
  readonly fill: { readonly ink: Ink; readonly opacity: number } | null;
  /** Whether a view's clip cuts these marks. */
  readonly clipped: boolean;
  /** Slanted lettering. */
  readonly slanted: boolean;
}

/** Widths in pens, a pen being a wide line; ISO 128 has narrow to wide as 1 : 2. */
const wide = 1;
const narrow = 0.5;

/** Dashes and gaps in pens: the order of ISO 128's, drawn closer so that the short edges of castings show them too. */
const dashesOf: Readonly<Record<LineKind, readonly number[]>> = {
  continuous: [],
  dashed: [4, 1.6],
  dotted: [0.2, 2.2],
  'long-dash-dot': [9, 1.6, 1, 1.6],
  'long-dash-double-dot': [9, 1.6, 1, 1.6, 1, 1.6],
  'long-dash-dash': [9, 1.6, 3.5, 1.6],
};

/**
 * Inks for white paper: the eight colours of Masataka Okabe and Kei Ito, "Color Universal Design" (2002, revised 2008),
 * which keep apart under the common colour-vision deficiencies, with greys for metal and paper.
 */
export const paperInks: Readonly<Record<Ink, string>> = {
  black: '#000000',
  grey: '#6b6b6b',
  metal: '#e4e2dc',
  blue: '#0072b2',
  sky: '#56b4e9',
  green: '#009e73',
  yellow: '#f0e442',
  vermillion: '#d55e00',
  purple: '#cc79a7',
  paper: '#ffffff',
};

/** The same inks on a dark screen: light for dark, and yellow dark enough to hatch over in light lines. */
export const nightInks: Readonly<Record<Ink, string>> = {
  ...paperInks,
  black: '#f2f2ee',
  grey: '#a3a39c',
  metal: '#3a3c40',
  blue: '#6cbcf0',
  green: '#2fc69a',
  yellow: '#7d7400',
  paper: '#1b1d20',
};

const drawn = (ink: Ink, kind: LineKind, pens: number): Style => ({
  line: { ink, kind, pens },
  fill: null,
  clipped: true,
  slanted: false,
});
const filled = (style: Style, ink: Ink, opacity = 1): Style => ({ ...style, fill: { ink, opacity } });
const lineless: Style = { line: null, fill: null, clipped: true, slanted: false };
const unclipped = (style: Style): Style => ({ ...style, clipped: false });

const styles: Readonly<Record<Role, Style>> = {
  room: filled(drawn('blue', 'long-dash-double-dot', narrow), 'sky', 0.16),
  'fixed-metal': filled(lineless, 'metal'),
  fixed: filled(drawn('black', 'continuous', wide), 'metal'),
  'fixed-behind': drawn('black', 'dashed', narrow),
  'as-it-is': drawn('black', 'continuous', narrow),
  traced: drawn('grey', 'dotted', wide),
  hollow: filled(drawn('blue', 'dashed', narrow), 'sky', 0.45),
  'do-not-cut': drawn('purple', 'continuous', narrow),
  rotating: drawn('green', 'long-dash-dash', narrow),
  'moving-beyond': drawn('blue', 'continuous', narrow),
  moving: drawn('blue', 'continuous', wide),
  'on-the-way': drawn('blue', 'long-dash-double-dot', narrow),
  relief: filled(drawn('black', 'continuous', wide), 'yellow', 0.75),
  'relief-hatch': drawn('black', 'continuous', narrow),
  foul: filled(drawn('vermillion', 'continuous', narrow), 'vermillion', 0.85),
  'foul-stretch': filled(drawn('vermillion', 'continuous', narrow), 'vermillion', 0.22),
  'clearance-curve': drawn('blue', 'continuous', 1.5 * wide),
  'clearance-after': drawn('black', 'dotted', 2 * wide),
  'error-band': filled(drawn('blue', 'dotted', wide), 'sky', 0.3),
  asked: drawn('black', 'dashed', wide),
  'first-line': drawn('black', 'dashed', narrow),
  'last-line': drawn('black', 'long-dash-dot', wide),
  'centre-line': drawn('black', 'long-dash-dot', narrow),
  hole: drawn('black', 'continuous', narrow),
  dowel: filled(drawn('black', 'continuous', narrow), 'black'),
  'moving-hole': drawn('blue', 'continuous', narrow),
  'mating-face': drawn('black', 'continuous', 2 * wide),
  witness: unclipped(filled(drawn('black', 'continuous', wide), 'black')),
  'first-touch': filled(drawn('vermillion', 'continuous', wide), 'paper', 0),
  'detail-ring': unclipped(drawn('black', 'continuous', narrow)),
  leader: unclipped(filled(drawn('grey', 'continuous', narrow), 'grey')),
  frame: unclipped(drawn('black', 'continuous', narrow)),
  'scale-block': unclipped(filled(drawn('black', 'continuous', narrow), 'black')),
  text: unclipped(filled(lineless, 'black')),
  'moving-text': { ...unclipped(filled(lineless, 'blue')), slanted: true },
};

export const styleOf = (role: Role): Style => styles[role];

/** Dashes and gaps of a line in mm. */
export const dashesMm = (kind: LineKind, penMm: number): readonly number[] =>
  dashesOf[kind].map((pens) => pens * penMm);
