import type { Finding, Reading } from '../files/finding.ts';
import type { PartFile } from '../files/part-file.ts';
import { readPart } from '../job/read-part.ts';

/** A part made of a drawing, where it keeps the rules of a part file; else findings that name its sections, holes, hollows and the rest. */
export function soundPart(file: string, part: PartFile): Reading<PartFile> {
  const reading = readPart(file, JSON.stringify(part), 'fixed');
  if (reading.ok) return { ok: true, value: part };
  return { ok: false, findings: reading.findings.map((finding) => inDrawing(finding, part)) };
}

function inDrawing(finding: Finding, { sections, holes = [], hollows = [], doNotCut = [] }: PartFile): Finding {
  const named = (text: string): string =>
    text
      .replace(/sections\[(\d+)\]/g, (whole, i) => (sections[i] ? `section ${sections[i].id}` : whole))
      .replace(/\bholes\[(\d+)\]/g, (whole, i) => (holes[i] ? `hole ${holes[i].id}` : whole))
      .replace(/\bhollows\[(\d+)\]/g, (whole, i) => (hollows[i] ? `hollow ${hollows[i].id}` : whole))
      .replace(/\bdoNotCut\[(\d+)\]/g, (whole, i) => (doNotCut[i] ? `do not cut ${doNotCut[i].id}` : whole))
      .replace(/\bwallReadings\[(\d+)\]/g, (_, i) => `wall reading ${Number(i) + 1}`)
      .replace(/\.loops\[(\d+)\]/g, (_, i) => `, outline ${Number(i) + 1}`)
      .replace(/\[(\d+)\]$/, (_, i) => `, vertex ${Number(i) + 1}`);
  return { ...finding, at: named(finding.at), found: named(finding.found) };
}
