import { useEffect, useState } from 'preact/hooks';
import type { PagePreview, SheetPreview } from '../../src/drawing/markout/markout-pages.ts';
import type { PaperName } from '../../src/drawing/scene/papers.ts';
import type { SheetsReply } from '../heavy/questions.ts';
import '../sheets.css';
import { words } from '../words.ts';

interface Props {
  readonly shown: SheetsReply;
  readonly paper: PaperName;
}

/** Every page that will come out of the printer, small, under what it is for. */
export const Sheets = ({ shown: { sheets, notMade }, paper }: Props) => (
  <section class="sheets" aria-label={words.pages}>
    {sheets.map((sheet) => (
      <Sheet key={sheet.name} sheet={sheet} paper={paper} />
    ))}
    {notMade.map((why) => (
      <p key={why}>{why}</p>
    ))}
  </section>
);

function Sheet({
  sheet: { name, purpose, drawings, on },
  paper,
}: {
  readonly sheet: SheetPreview;
  readonly paper: PaperName;
}) {
  const addresses = useAddresses(drawings);
  const { count, printable, pages } = on[paper];
  return (
    <div class="sheet">
      <p>
        <strong>{name}</strong> {purpose}: {printable ? words.sheetsOfPaper(count) : words.tooManySheets(count)}
      </p>
      <div class="pages" role="img" aria-label={words.pagesOf(name, pages.length)}>
        {pages.map((page, i) => (
          <Page key={`${paper} ${i}`} page={page} drawing={addresses[page.drawing] ?? ''} />
        ))}
      </div>
    </div>
  );
}

const percent = (part: number, of: number): string => `${(100 * part) / of}%`;

const Page = ({ page, drawing }: { readonly page: PagePreview; readonly drawing: string }) => (
  <div
    class="page"
    style={{ aspectRatio: `${page.widthMm} / ${page.heightMm}`, width: `${page.widthMm * remPerMm}rem` }}
  >
    {drawing === '' ? null : (
      <img
        src={drawing}
        alt=""
        loading="lazy"
        style={{
          left: percent(page.drawnLeftMm, page.widthMm),
          top: percent(page.drawnTopMm, page.heightMm),
          width: percent(page.drawnWidthMm, page.widthMm),
        }}
      />
    )}
  </div>
);

/** So small are the pages shown. */
const remPerMm = 0.028;

/** Addresses of pictures for as long as they are shown. */
function useAddresses(svgs: readonly string[]): readonly string[] {
  const [addresses, setAddresses] = useState<readonly string[]>([]);
  useEffect(() => {
    const made = svgs.map((svg) => URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' })));
    setAddresses(made);
    return () => {
      for (const address of made) URL.revokeObjectURL(address);
    };
  }, [svgs]);
  return addresses;
}
