import { isAnyToDrill } from '../../drill/drill-result.ts';
import { boltTexts, drillLine, drillTables, metTexts } from '../../words/drill-text.ts';
import { shortName } from '../../words/names.ts';
import { type Html, list, paragraphs, section, subheading, table } from './html.ts';
import type { ReportInput } from './report-input.ts';

/** The holes to be drilled, where they go and what is beside them; nothing where there are none. */
export function holes({ joint, drill }: ReportInput): Html | null {
  if (!isAnyToDrill(drill)) return null;
  const parts = (['fixed', 'moving'] as const).flatMap((part) => {
    const tables = drillTables(joint, drill, part);
    if (tables === null) return [];
    const name = shortName(joint[part]);
    return [
      table(`To drill in ${name}: where they go`, tables.places),
      table(`What is beside them in ${name}`, tables.walls),
      list(tables.against),
    ];
  });
  return section(
    'holes',
    'Holes to be drilled',
    paragraphs([drillLine(drill)]),
    ...parts,
    ...subheading('Bolts that remain', list([...metTexts(joint, drill), ...boltTexts(joint, drill)])),
  );
}
