import { dashesMm, type Ink, type Style } from '../scene/styles.ts';

/** Line and fill of a style as SVG has them, the pen as wide as a wide line. */
export const paintOf = (style: Style, pen: number, inks: Readonly<Record<Ink, string>>): Record<string, string> => ({
  ...linePaint(style, pen, inks),
  ...fillPaint(style, inks),
});

function linePaint({ line }: Style, penMm: number, inks: Readonly<Record<Ink, string>>): Record<string, string> {
  if (line === null) return { stroke: 'none' };
  const dashes = dashesMm(line.kind, penMm).map(number).join(' ');
  return {
    stroke: inks[line.ink],
    'stroke-width': number(line.pens * penMm),
    'stroke-linejoin': 'round',
    ...(line.kind === 'dotted' ? { 'stroke-linecap': 'round' } : {}),
    ...(dashes === '' ? {} : { 'stroke-dasharray': dashes }),
  };
}

function fillPaint({ fill }: Style, inks: Readonly<Record<Ink, string>>): Record<string, string> {
  if (fill === null) return { fill: 'none' };
  return {
    fill: inks[fill.ink],
    'fill-rule': 'evenodd',
    ...(fill.opacity === 1 ? {} : { 'fill-opacity': number(fill.opacity) }),
  };
}

/** To a ten-thousandth of a millimetre, without trailing noughts. */
export function number(value: number): string {
  const text = value.toFixed(4).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}
