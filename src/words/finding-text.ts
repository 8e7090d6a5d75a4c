import type { Finding } from '../files/finding.ts';
import { counted } from './layout.ts';

/** Longest piece of a file that is quoted back. */
const quotedLength = 200;

/** One finding on one line: file, place, what was found, what was expected, and the nearest that exists. */
export function findingText({ file, at, found, expected, didYouMean }: Finding): string {
  const where = [file, at].filter((part) => part !== '').join(', ');
  const hint = didYouMean === undefined ? '' : ` Did you mean "${shortened(didYouMean)}"?`;
  return `${where === '' ? '' : `${where}: `}found ${shortened(found)}; expected ${shortened(expected)}.${hint}`;
}

/** Every finding, and what became of the command. */
export function findingsText(findings: readonly Finding[]): string {
  const closing = `${counted(findings.length, 'thing')} to put right; nothing was computed or written.`;
  return [...findings.map(findingText), closing].join('\n');
}

const shortened = (text: string): string => (text.length <= quotedLength ? text : `${text.slice(0, quotedLength)}…`);
