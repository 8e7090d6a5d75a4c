import type { Element } from '@xmldom/xmldom';
import type { LengthUnit } from '../length-unit.ts';
import { type Affine, scaled, unmoved } from './affine.ts';
import { numbersIn } from './svg-transform.ts';

/** Millimetres in the units that have a size on paper; a pixel has none that is sure. */
const paperUnits: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
};

interface Size {
  readonly value: number;
  /** Null: pixels. */
  readonly mm: number | null;
  readonly unit: string;
}

/** From user units to the drawing's unit, y still down; a null unit means pixels, whose size must be asked for. */
export interface Sizing {
  readonly map: Affine;
  readonly unit: LengthUnit | null;
}

/**
 * How large a drawing is: its width and height, where they carry a unit, over its viewBox. Without a viewBox a user
 * unit is one pixel whatever the width says. Both ways differ only where `preserveAspectRatio` is `none`; else the
 * smaller counts, the larger for `slice`.
 */
export function sizingOf(svg: Element): Sizing {
  const box = viewBoxOf(svg);
  const [width, height] = ['width', 'height'].map((side) => sizeOf(svg.getAttribute(side)));
  const sized = [width, height].find((size) => size?.mm) ?? width ?? height;
  if (box === null || !sized) return { map: unmoved, unit: null };
  const inUnits = (size: Size | null | undefined, over: number): number | null =>
    size && (size.mm === null) === (sized.mm === null) ? (size.value * (size.mm ?? 1)) / (sized.mm ?? 1) / over : null;
  const [across, down] = [inUnits(width, box.width), inUnits(height, box.height)];
  const map = fitted(across ?? (down as number), down ?? (across as number), svg);
  return { map, unit: sized.mm === null ? null : { name: sized.unit, mm: sized.mm } };
}

/** The scale that an inner picture's viewBox asks for, its width and height in the units round it. */
export function innerScale(element: Element, width: number, height: number): Affine {
  const box = viewBoxOf(element);
  return box === null ? unmoved : fitted(width / box.width, height / box.height, element);
}

function fitted(across: number, down: number, element: Element): Affine {
  const aspect = element.getAttribute('preserveAspectRatio') ?? '';
  if (aspect.includes('none')) return scaled(across, down);
  return scaled(aspect.includes('slice') ? Math.max(across, down) : Math.min(across, down));
}

export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function viewBoxOf(element: Element): ViewBox | null {
  const [x, y, width, height] = numbersIn(element.getAttribute('viewBox') ?? '') ?? [];
  if (x === undefined || y === undefined || width === undefined || height === undefined) return null;
  return width > 0 && height > 0 ? { x, y, width, height } : null;
}

function sizeOf(attribute: string | null): Size | null {
  const [, digits, unit = ''] = /^\s*([+-]?[\d.]+(?:e[+-]?\d+)?)\s*([a-z]*)\s*$/i.exec(attribute ?? '') ?? [];
  const [value, name] = [Number(digits), unit.toLowerCase()];
  if (!(value > 0) || !Number.isFinite(value)) return null;
  if (name === '' || name === 'px') return { value, mm: null, unit: 'px' };
  const mm = paperUnits[name];
  return mm === undefined ? null : { value, mm, unit: name };
}
