import { type Affine, affine, chained, moved, scaled, turned, unmoved } from './affine.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

type Maker = (numbers: readonly number[]) => Affine;

/** The transform functions by name, with how many numbers each may take. */
const makers: Readonly<Record<string, { readonly takes: readonly number[]; readonly make: Maker }>> = {
  matrix: { takes: [6], make: ([a = 1, b = 0, c = 0, d = 1, e = 0, f = 0]) => affine(a, b, c, d, e, f) },
  translate: { takes: [1, 2], make: ([x = 0, y = 0]) => moved({ x, y }) },
  scale: { takes: [1, 2], make: ([x = 1, y = x]) => scaled(x, y) },
  rotate: {
    takes: [1, 3],
    make: ([degrees = 0, x = 0, y = 0]) => chained(moved({ x, y }), turned(radians(degrees)), moved({ x: -x, y: -y })),
  },
  skewX: { takes: [1], make: ([degrees = 0]) => affine(1, 0, Math.tan(radians(degrees)), 1) },
  skewY: { takes: [1], make: ([degrees = 0]) => affine(1, Math.tan(radians(degrees)), 0, 1) },
};

/** The map that a `transform` attribute says; null where it cannot be read. */
export function transformOf(attribute: string): Affine | null {
  const one = /^\s*([a-zA-Z]+)\s*\(([^()]*)\)\s*,?/;
  const maps: Affine[] = [unmoved];
  let rest = attribute.trim();
  while (rest !== '') {
    const [whole, name, inside] = one.exec(rest) ?? [];
    const maker = name === undefined || !Object.hasOwn(makers, name) ? undefined : makers[name];
    const numbers = numbersIn(inside ?? '');
    if (whole === undefined || maker === undefined || numbers === null || !maker.takes.includes(numbers.length))
      return null;
    maps.push(maker.make(numbers));
    rest = rest.slice(whole.length).trim();
  }
  return chained(...maps);
}

const numberPattern = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/g;

/** The numbers of a list parted by blanks or commas; null where anything else stands in it. */
export function numbersIn(list: string): number[] | null {
  if (/[^\s,]/.test(list.replace(numberPattern, ' '))) return null;
  const numbers = (list.match(numberPattern) ?? []).map(Number);
  return numbers.every(Number.isFinite) ? numbers : null;
}
