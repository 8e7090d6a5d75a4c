import { basename } from 'node:path';
import type { Finding, Reading } from '../src/files/finding.ts';
import { shown } from '../src/files/shown.ts';
import type { AskedHole, ImportOptions } from '../src/intake/import-options.ts';
import { depthIn } from '../src/intake/layers.ts';
import type { HoleKind } from '../src/job/casting.ts';

/** The options of `fettle import` as the command line gives them. */
export interface ImportFlags {
  readonly output?: string;
  readonly viewedFrom?: string;
  readonly units?: string;
  readonly dpi?: string;
  readonly name?: string;
  readonly layer?: readonly string[];
  readonly section?: string;
  readonly depth?: string;
  readonly dowels?: readonly string[];
  readonly bolts?: readonly string[];
  readonly tapped?: readonly string[];
  readonly hole?: readonly string[];
  readonly mayCut?: readonly string[];
  readonly join?: string;
  readonly traceError?: string;
  readonly gotBy?: string;
  readonly json?: boolean;
}

interface ImportRequest {
  readonly partFile: string;
  readonly options: ImportOptions;
}

const numberWritten = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const holeKinds: readonly HoleKind[] = ['dowel', 'bolt', 'tapped', 'stud', 'bore', 'planned'];
const viewed =
  '--viewed-from face (looking at its own mating face) or --viewed-from back (through the part from behind)';

/** What the flags ask for, or everything in them that cannot be understood. */
export function importRequest(file: string, flags: ImportFlags): Reading<ImportRequest> {
  const findings: Finding[] = [];
  const refuse = (at: string, found: string, expected: string): null => {
    findings.push({ file, at, found, expected });
    return null;
  };
  const number = (at: string, text: string | undefined, least: number): number | null => {
    if (text === undefined) return null;
    const value = numberWritten.test(text) ? Number(text) : Number.NaN;
    return value >= least ? value : refuse(at, shown(text), least > 0 ? 'a number over 0' : 'a number, 0 or more');
  };
  const side = flags.viewedFrom;
  const viewedFrom = side === 'face' || side === 'back' ? side : refuse('--viewed-from', shown(side), viewed);
  const partFile = flags.output ?? refuse('--output', 'nothing', '-o and the part file to write');
  const depth = flags.depth === undefined ? null : depthIn(flags.depth);
  if (flags.depth !== undefined && depth === null) refuse('--depth', shown(flags.depth), 'from,to such as 12,90');
  const options: ImportOptions = {
    name: flags.name ?? basename(file).replace(/\.[^.]*$/, ''),
    viewedFrom: viewedFrom ?? 'face',
    units: flags.units ?? null,
    dpi: number('--dpi', flags.dpi, Number.MIN_VALUE),
    layers: flags.layer ?? [],
    section: flags.section ?? null,
    holeLayers: holeLayersOf(flags),
    holes: (flags.hole ?? []).flatMap((text) => holeIn(text) ?? refuse('--hole', shown(text), holeForm) ?? []),
    depth,
    join: number('--join', flags.join, 0),
    traceError: number('--trace-error', flags.traceError, 0),
    gotBy: flags.gotBy ?? null,
    mayCut: flags.mayCut ?? [],
    proposeHoles: null,
  };
  return findings.length > 0 ? { ok: false, findings } : { ok: true, value: { partFile: partFile ?? '', options } };
}

function holeLayersOf({ dowels = [], bolts = [], tapped = [] }: ImportFlags): ImportOptions['holeLayers'] {
  const of = (kind: HoleKind) => (layer: string) => ({ layer, kind });
  return [...dowels.map(of('dowel')), ...bolts.map(of('bolt')), ...tapped.map(of('tapped'))];
}

const holeForm = `ID=kind@x,y with a kind of ${holeKinds.join(', ')}, such as CRANK=bore@0,0`;

function holeIn(text: string): AskedHole | null {
  const [, id, word, x = '', y = ''] = /^([^=]*\S)\s*=\s*(\w+)\s*@\s*([^,\s]+)\s*,\s*([^,\s]+)\s*$/.exec(text) ?? [];
  const kind = holeKinds.find((each) => each === word?.toLowerCase());
  if (id === undefined || kind === undefined || !numberWritten.test(x) || !numberWritten.test(y)) return null;
  return { id: id.trim(), kind, at: { x: Number(x), y: Number(y) } };
}
