import type { BenchCase } from './contest.ts';
import type { GrowthRow } from './growth.ts';
import type { MemoryRow } from './memory.ts';

export interface Report {
  readonly machine: {
    readonly cpu: string;
    readonly cores: number;
    readonly memoryGb: number;
    readonly system: string;
    readonly node: string;
  };
  readonly cases: readonly BenchCase[];
  readonly growth: readonly GrowthRow[];
  readonly memory: readonly MemoryRow[];
}

/** The report as tables to read. */
export function reportText({ machine, cases, growth, memory }: Report): string {
  const { cpu, cores, memoryGb, system, node } = machine;
  return [
    `${cpu}, ${cores} cores, ${memoryGb} GB; ${system}; node ${node}`,
    '',
    table(
      ['ours against a peer', 'edges', 'ours ms', 'peer', 'peer ms', 'ratio', 'at least', ''],
      cases.map(caseCells),
    ),
    '',
    table(['growth', 'edges', 'pairs looked at', '× per doubling', 'ms', '× per doubling'], growth.map(growthCells)),
    '',
    table(
      ['memory of one outline', 'edges', 'tree kB', 'frame kB', 'bytes an edge', 'left behind kB'],
      memory.map(memoryCells),
    ),
  ].join('\n');
}

const caseCells = ({ name, edges, oursMs, peer, peerMs, ratio, atLeast }: BenchCase): string[] => [
  name,
  edges === null ? '' : `${edges}`,
  figure(oursMs),
  peer,
  figure(peerMs),
  figure(ratio),
  atLeast === null ? '' : figure(atLeast),
  atLeast !== null && ratio < atLeast ? 'missed' : '',
];

const growthCells = (row: GrowthRow): string[] => [
  row.name,
  `${row.edges}`,
  `${row.pairEvaluations}`,
  row.evaluationsPerDoubling === null ? '' : row.evaluationsPerDoubling.toFixed(2),
  figure(row.ms),
  row.msPerDoubling === null ? '' : row.msPerDoubling.toFixed(2),
];

const memoryCells = (row: MemoryRow): string[] => [
  row.name,
  `${row.edges}`,
  figure(row.treeBytes / 1024),
  figure(row.turnFrameBytes / 1024),
  figure(row.bytesPerEdge),
  figure(row.leftBehindBytes / 1024),
];

/** Three figures that count. */
const figure = (value: number): string =>
  value === 0 ? '0' : Math.abs(value) >= 100 ? value.toFixed(0) : value.toPrecision(3);

/** Columns as wide as their widest cell; the first and those of words to the left, numbers to the right. */
function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const lines = [heads, ...rows];
  const widths = heads.map((_, column) => Math.max(...lines.map((cells) => cells[column]?.length ?? 0)));
  const isNumeric = heads.map((_, column) => rows.every((cells) => /^[-\d.e+]*$/.test(cells[column] ?? '')));
  return lines
    .map((cells) =>
      cells
        .map((cell, i) => pad(cell, widths[i] as number, isNumeric[i] === true))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

const pad = (cell: string, width: number, right: boolean): string =>
  right ? cell.padStart(width) : cell.padEnd(width);
