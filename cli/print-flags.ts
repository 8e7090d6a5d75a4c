import type { PrintOptions } from '../src/drawing/pdf/pdf.ts';
import { type BarReading, barMm, isReading, mostOffMm } from '../src/drawing/scene/check-bars.ts';
import { isPaper, papers } from '../src/drawing/scene/papers.ts';
import type { Finding, Reading } from '../src/files/finding.ts';
import { shown } from '../src/files/shown.ts';

/** What is to be printed on, and how true the printer is, as the command line gives it. */
export interface PrintFlags {
  readonly paper: string;
  readonly bars?: string;
}

/** The flags of every command that writes PDFs. */
export const printFlags = {
  paper: ['--paper <size>', `of PDFs: ${Object.keys(papers).join(', ')}`, 'a4'],
  bars: ['--bars <x,y>', 'what the printer made of the 150 mm check bars, in mm: its error is taken off'],
} as const;

/** What the flags ask of the printer, or everything in them that cannot be understood. */
export function printOptions(file: string, { paper, bars }: PrintFlags): Reading<PrintOptions> {
  const findings: Finding[] = [];
  const name = paper.toLowerCase();
  if (!isPaper(name)) {
    findings.push({ file, at: '--paper', found: shown(paper), expected: Object.keys(papers).join(', ') });
  }
  const reading = bars === undefined ? null : barsIn(bars);
  if (bars !== undefined && reading === null) {
    const expected = `two lengths in mm within ${mostOffMm} of ${barMm}, x then y, such as 149.2,150.4`;
    findings.push({ file, at: '--bars', found: shown(bars), expected });
  }
  if (findings.length > 0 || !isPaper(name)) return { ok: false, findings };
  return { ok: true, value: { paper: papers[name], ...(reading === null ? {} : { bars: reading }) } };
}

function barsIn(text: string): BarReading | null {
  const [, x, y] = /^\s*(\d+(?:\.\d+)?)\s*,\s*(\d+(?:\.\d+)?)\s*$/.exec(text) ?? [];
  const bars = { xMm: Number(x), yMm: Number(y) };
  return isReading(bars) ? bars : null;
}
