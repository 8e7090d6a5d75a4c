import type { DrillResult } from '../../drill/drill-result.ts';
import type { Joint } from '../../joint/joint.ts';
import { type MarkoutFile, sheetFiles } from '../markout/sheet-files.ts';
import type { PrintOptions } from '../pdf/pdf.ts';
import { drillCsv } from './drill-csv.ts';
import { drillSheets } from './drill-sheets.ts';

/** Templates, DXF and the table of the holes to be drilled; none where there are none. */
export async function drillFiles(joint: Joint, drill: DrillResult, options: PrintOptions): Promise<MarkoutFile[]> {
  const sheets = drillSheets(joint, drill);
  if (sheets.length === 0) return [];
  const drawn = await Promise.all(sheets.map((sheet) => sheetFiles(sheet, options)));
  return [...drawn.flat(), { name: 'drill.csv', as: 'csv', content: drillCsv(joint, drill) }];
}
