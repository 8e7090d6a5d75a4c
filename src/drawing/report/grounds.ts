import { checkCautions, grindCautions } from '../../words/cautions.ts';
import { boltHeading, groundsOf } from '../../words/check-text.ts';
import { boltRows, dowelText } from '../../words/dowel-text.ts';
import { nothingToCut } from '../../words/grind-text.ts';
import { partText, viewedFromText } from '../../words/part-text.ts';
import { planNoticeText } from '../../words/plan-notices.ts';
import { assumptionsOf, madeText, notKnown, reportUse, sectionRows } from '../../words/report-text.ts';
import { el, type Html, list, paragraphs, section, subheading, table } from './html.ts';
import type { ReportInput } from './report-input.ts';

/** How the parts dowelled up, and which bolts line up. */
export const dowelUp = ({ joint }: ReportInput): Html | null =>
  section('dowel-up', 'Dowels and bolts', paragraphs([dowelText(joint)]), table(boltHeading(joint), boltRows(joint)));

/** Every warning of the check and of the plan, each once. */
export const warnings = ({ joint, check, plan }: ReportInput): Html | null =>
  section(
    'warnings',
    'Warnings',
    list([...new Set([...check.notices, ...plan.notices].map((notice) => planNoticeText(notice, joint.fit.units)))]),
  );

/** What is proved, what is only assumed, what nobody knows. */
export const grounds = ({ joint, check, plan }: ReportInput): Html | null =>
  section(
    'grounds',
    'What this rests on',
    list(groundsOf(joint, check)),
    ...subheading('Assumed', list(assumptionsOf(joint))),
    ...subheading('Not known', list(notKnown(joint, plan))),
  );

export function cautions({ joint, plan }: ReportInput): Html | null {
  const texts = nothingToCut(plan) ? checkCautions(joint) : grindCautions(joint);
  const told = section('take-care', 'Take care', list(texts));
  return told && { ...told, attributes: { ...told.attributes, class: 'take-care' } };
}

/** The parts as traced, and the files by their hashes. */
export const inputs = ({ joint, inputs, date, version }: ReportInput): Html | null =>
  section(
    'inputs',
    'What it was made from',
    paragraphs([
      viewedFromText(joint),
      partText('Fixed', joint.fixed),
      partText('Moving', joint.moving),
      ...joint.rotating.map((part) => partText('Turning', part)),
    ]),
    table('Sections as traced', sectionRows([joint.fixed, joint.moving, ...joint.rotating], joint.fit.units)),
    files(inputs),
    el('p', { class: 'made' }, `${madeText(date, version)} ${reportUse}`),
  );

function files(inputs: ReportInput['inputs']): Html | null {
  const all = table('Files, by SHA-256', [
    ['file', 'bytes', 'SHA-256'],
    ...inputs.map(({ file, bytes, sha256 }) => [file, String(bytes), sha256]),
  ]);
  return all && hashed(all);
}

/** A hash may break anywhere. */
function hashed(html: Html): Html {
  const [only] = html.children;
  if (html.tag === 'td' && typeof only === 'string' && /^[0-9a-f]{64}$/.test(only))
    return { ...html, attributes: { class: 'hash' } };
  return { ...html, children: html.children.map((child) => (typeof child === 'string' ? child : hashed(child))) };
}
