import { farLengths } from '../files/far-lengths.ts';
import type { Finding } from '../files/finding.ts';
import { suggesting } from '../files/nearest.ts';
import { mostItems, partFile } from '../files/part-file.ts';
import { asList, fieldOf, listOf, textOf } from '../files/raw-value.ts';
import { schemaFindings } from '../files/schema-findings.ts';
import { shown } from '../files/shown.ts';
import { materialNamed, materials } from '../trade/materials.ts';
import { mmPer } from './lengths.ts';
import { outlineFindings } from './outline-findings.ts';

/** More vertices than this in one part are refused unchecked, so that reading ends in bounded time. */
export const mostVertices = 400_000;

/** What keeps a raw value from being a sound part: its schema, lengths, ids, material and outlines, all at once. */
export function partFindings(file: string, raw: unknown): Finding[] {
  const mm = mmPer(textOf(raw, 'units') === 'in' ? 'in' : 'mm');
  const holders = loopHoldersOf(raw);
  const vertices = holders.reduce((sum, { loops }) => sum + loops.reduce(addVertices, 0), 0);
  if (vertices > mostVertices) {
    return [{ file, at: '', found: `${vertices} vertices`, expected: `at most ${mostVertices} vertices in one part` }];
  }
  return [
    ...schemaFindings(file, partFile, withoutOutlines(raw)),
    ...holders.flatMap(({ path, loops }) => outlineFindings(file, path, loops, mm)),
    ...farLengths(file, raw, mm),
    ...materialFindings(file, fieldOf(raw, 'material')),
    ...['holes', ...holderLists].flatMap((list) => repeatedIds(file, list, listOf(raw, list))),
  ];
}

const holderLists = ['sections', 'hollows', 'doNotCut'] as const;

interface RawLoopHolder {
  readonly path: readonly PropertyKey[];
  readonly loops: readonly unknown[];
}

const loopHoldersOf = (raw: unknown): RawLoopHolder[] => [
  ...holderLists.flatMap((list) =>
    listOf(raw, list)
      .slice(0, mostItems)
      .map((item, i) => ({ path: [list, i, 'loops'], loops: listOf(item, 'loops') })),
  ),
  { path: ['traced', 'loops'], loops: listOf(fieldOf(raw, 'traced'), 'loops') },
];

const addVertices = (sum: number, loop: unknown): number => sum + Math.max(1, asList(loop).length);

/** The part with a plain outline in place of its own, which are checked one by one. */
function withoutOutlines(raw: unknown): unknown {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return raw;
  const plain = (value: unknown): unknown => (Array.isArray(value) ? value.map(plainHolder) : plainHolder(value));
  return Object.fromEntries(Object.entries(raw).map(([key, value]) => [key, plain(value)]));
}

const plainHolder = (raw: unknown): unknown =>
  typeof raw === 'object' && raw !== null && listOf(raw, 'loops').length > 0 ? { ...raw, loops: plainLoops } : raw;

const plainLoops = [{ circle: [0, 0], radius: 1 }];

function materialFindings(file: string, material: unknown): Finding[] {
  if (typeof material !== 'string' || materialNamed(material) !== null) return [];
  const names = materials.map(({ name }) => name);
  const expected = `${names.join(', ')}, or { "density": g/cm³ }`;
  return [suggesting({ file, at: 'material', found: shown(material), expected }, material, names)];
}

function repeatedIds(file: string, list: string, items: readonly unknown[]): Finding[] {
  const firsts = new Map<string, number>();
  return items.flatMap((item, i): Finding[] => {
    const id = textOf(item, 'id');
    if (id === undefined) return [];
    const first = firsts.get(id);
    if (first === undefined) {
      firsts.set(id, i);
      return [];
    }
    return [{ file, at: `${list}[${i}].id`, found: `${shown(id)}, as in ${list}[${first}]`, expected: 'each id once' }];
  });
}
