import { type Run, type StrategyName, strategyNames } from '../run-pair.ts';
import { overLeast } from './figures.ts';

const inks: Record<StrategyName, string> = {
  'by eye': '#b5543a',
  'home only': '#c9a227',
  planned: '#2f6f8f',
  'last line': '#6f9f5f',
  'trial, then rest': '#7a5c99',
};

interface Scale {
  readonly title: string;
  readonly under: string;
  readonly bins: number;
  readonly label: (bin: number) => string;
  readonly binOf: (run: Run) => number;
}

/** How many goes each strategy takes: share of runs for each number of goes. */
export const goesChart = (runs: readonly Run[]): string =>
  histogram(runs, {
    title: 'Goes until done',
    under: 'offerings up after the first cut',
    bins: 21,
    label: (bin) => (bin === 20 ? '20+' : String(bin)),
    binOf: ({ goes }) => Math.min(20, goes),
  });

/** How much metal each strategy takes for the least there is. */
export const metalChart = (runs: readonly Run[]): string =>
  histogram(runs, {
    title: 'Metal taken over the least',
    under: 'times the least that keeps the asked clearance',
    bins: 21,
    label: (bin) => (bin === 20 ? '5+' : bin % 2 === 0 ? (bin / 4).toFixed(1) : ''),
    binOf: (run) => Math.min(20, Math.floor(4 * overLeast(run))),
  });

const size = { width: 720, height: 320, left: 50, right: 10, top: 44, bottom: 50 };

function histogram(runs: readonly Run[], { title, under, bins, label, binOf }: Scale): string {
  const tried = runs.filter(({ ending, wentUncut }) => ending !== 'refused' && !wentUncut);
  const shares = strategyNames.map((strategy) => {
    const own = tried.filter((run) => run.strategy === strategy).map(binOf);
    return Array.from({ length: bins }, (_, bin) => own.filter((at) => at === bin).length / Math.max(1, own.length));
  });
  const most = Math.max(0.1, Math.ceil(10 * Math.max(...shares.flat())) / 10);
  const binPx = (size.width - size.left - size.right) / bins;
  const floor = size.height - size.bottom;
  const yOf = (share: number): number => floor - (share / most) * (floor - size.top);
  const barPx = (binPx * 0.84) / strategyNames.length;
  const bars = strategyNames.flatMap((strategy, i) =>
    (shares[i] ?? []).map((share, bin) => {
      const x = size.left + bin * binPx + 0.08 * binPx + i * barPx;
      return `<rect x="${px(x)}" y="${px(yOf(share))}" width="${px(barPx)}" height="${px(floor - yOf(share))}" fill="${inks[strategy]}"/>`;
    }),
  );
  const labels = Array.from({ length: bins }, (_, bin) =>
    text(size.left + (bin + 0.5) * binPx, floor + 16, label(bin), 'middle'),
  );
  const lines = Array.from({ length: Math.round(10 * most) + 1 }, (_, i) => {
    const y = yOf(i / 10);
    return `<path d="M${size.left} ${px(y)}H${size.width - size.right}" stroke="#ddd"/>${text(size.left - 6, y + 4, `${10 * i} %`, 'end')}`;
  });
  const legend = strategyNames.map((strategy, i) => {
    const x = size.width - 400 + 100 * i;
    return `<rect x="${x}" y="12" width="12" height="12" fill="${inks[strategy]}"/>${text(x + 17, 22, strategy, 'start')}`;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size.width} ${size.height}" font-family="sans-serif" font-size="12">`,
    `<rect width="${size.width}" height="${size.height}" fill="#fff"/>`,
    ...lines,
    ...bars,
    ...labels,
    ...legend,
    text(
      size.left,
      22,
      `${title}, ${new Set(tried.map(({ family, seed }) => `${family} ${seed}`)).size} pairs`,
      'start',
    ),
    text((size.left + size.width) / 2, size.height - 12, under, 'middle'),
    '</svg>\n',
  ].join('\n');
}

const px = (x: number): string => x.toFixed(1);

const text = (x: number, y: number, words: string, anchor: 'start' | 'middle' | 'end'): string =>
  `<text x="${px(x)}" y="${px(y)}" text-anchor="${anchor}">${words}</text>`;
