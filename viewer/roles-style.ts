import { type Ink, nightInks, paperInks, type Role, styleOf } from '../src/drawing/scene/styles.ts';
import { paintOf } from '../src/drawing/svg/svg-paint.ts';

const roles: readonly Role[] = [
  'room',
  'fixed-metal',
  'fixed',
  'fixed-behind',
  'traced',
  'hollow',
  'do-not-cut',
  'rotating',
  'moving-beyond',
  'moving',
  'relief',
  'foul',
  'foul-stretch',
  'clearance-curve',
  'clearance-after',
  'error-band',
  'asked',
  'first-line',
  'last-line',
  'centre-line',
  'hole',
  'dowel',
  'moving-hole',
  'witness',
  'first-touch',
  'leader',
];

/** Width of a wide line on the screen, pixels. */
const penPx = 1.6;

/** The look of every kind of mark, as on paper, in the inks of the page's light or dark. */
export function rolesStyle(): CSSStyleSheet {
  const sheet = new CSSStyleSheet();
  const dark = matchMedia('(prefers-color-scheme: dark)');
  const write = (): void => sheet.replaceSync(rulesIn(dark.matches ? nightInks : paperInks));
  dark.addEventListener('change', write);
  write();
  return sheet;
}

const rulesIn = (inks: Readonly<Record<Ink, string>>): string =>
  roles
    .map((role) => {
      const paint = Object.entries(paintOf(styleOf(role), penPx, inks)).map(([name, value]) => `${name}:${value}`);
      return `.${role}{${paint.join(';')}}`;
    })
    .join('\n');
