import { type Ink, nightInks, paperInks } from '../scene/styles.ts';

/** Drawings are inked for paper; on a dark screen each ink gives way to its own for the night. */
const nightDrawing = (Object.keys(paperInks) as Ink[])
  .filter((ink) => paperInks[ink] !== nightInks[ink])
  .map((ink) => {
    const [day, night] = [paperInks[ink], nightInks[ink]];
    return `  .drawing [fill="${day}"] { fill: ${night}; }\n  .drawing [stroke="${day}"] { stroke: ${night}; }`;
  })
  .join('\n');

/** The look of the report: paper first, then the dark screen, then the printer. */
export const pageStyle = `
:root { color-scheme: light dark; --paper: #ffffff; --ink: #1c1b19; --quiet: #57534b; --rule: #b9b4a8; --wash: #f2efe8; --mark: #1c1b19; }
* { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); font: 100%/1.5 "Segoe UI", Roboto, "Noto Sans", Arial, sans-serif; }
body { max-width: 66rem; margin: 0 auto; padding: 1rem 1.25rem 4rem; overflow-wrap: break-word; }
header p { margin: 0 0 0.4rem; }
h1 { font-size: 1.05rem; font-weight: 600; margin: 0 0 0.75rem; color: var(--quiet); }
.verdict { font-size: clamp(1.35rem, 4.5vw, 2rem); line-height: 1.2; font-weight: 700; margin: 0 0 0.75rem; padding: 0.6rem 0 0.6rem 0.9rem; border-left: 0.5rem solid var(--mark); }
.plan { font-size: 1.15rem; font-weight: 600; }
.move { margin: 0.75rem 0 1.25rem; }
button { min-height: 2.75rem; padding: 0.4rem 1rem; border: 2px solid var(--ink); border-radius: 0.3rem; background: var(--paper); color: inherit; font: inherit; font-weight: 600; }
dialog { width: 100%; height: 100%; max-width: none; max-height: none; padding: 0; border: 0; background: var(--paper); color: inherit; }
dialog[open] { display: flex; flex-direction: column; align-items: start; }
dialog button { margin: 0.4rem; }
iframe { flex: 1; width: 100%; border: 0; }
h2 { font-size: 1.35rem; line-height: 1.25; margin: 2.75rem 0 0.75rem; padding-top: 0.5rem; border-top: 2px solid var(--ink); }
header h2 { font-size: 1.05rem; margin: 1.25rem 0 0.5rem; padding: 0; border: 0; }
h3 { font-size: 1.05rem; margin: 1.75rem 0 0.5rem; }
p, ul { max-width: 46rem; margin: 0 0 0.75rem; }
ul { padding-left: 1.25rem; }
li { margin-bottom: 0.35rem; }
nav ul { display: flex; flex-wrap: wrap; gap: 0.25rem 1.25rem; list-style: none; padding: 0; max-width: none; }
a { color: inherit; text-underline-offset: 0.2em; }
a:focus-visible, button:focus-visible, .scroll:focus-visible { outline: 3px solid var(--ink); outline-offset: 2px; }
.scroll { overflow-x: auto; margin-bottom: 1rem; }
table { border-collapse: collapse; min-width: min(100%, 27rem); font-variant-numeric: tabular-nums; font-size: 0.94rem; }
caption { text-align: left; padding: 0 0 0.4rem; color: var(--quiet); }
th, td { text-align: left; vertical-align: baseline; padding: 0.3rem 0.9rem 0.3rem 0; border-bottom: 1px solid var(--rule); overflow-wrap: normal; min-width: 2.5rem; max-width: 22rem; }
thead th, thead td { border-bottom: 2px solid var(--ink); vertical-align: bottom; }
tbody th { font-weight: 600; }
.figure { text-align: right; }
td.figure, .word { white-space: nowrap; }
td.lines { min-width: 14rem; }
th.lines { min-width: 11rem; }
.hash { min-width: 18rem; overflow-wrap: anywhere; font-family: ui-monospace, Consolas, "DejaVu Sans Mono", monospace; font-size: 0.85em; }
dl { display: grid; grid-template-columns: minmax(7rem, max-content) 1fr; gap: 0.3rem 1rem; margin: 0 0 1rem; max-width: 46rem; }
dt { font-weight: 600; }
dd { margin: 0; }
.take-care { padding: 0.75rem 1rem 0.25rem; background: var(--wash); border: 2px solid var(--ink); }
.take-care h2 { margin-top: 0; border-top: 0; padding-top: 0; }
figure { margin: 0 0 1.5rem; }
figure .scroll { margin-bottom: 0.4rem; }
figcaption { color: var(--quiet); max-width: 46rem; font-size: 0.94rem; }
.drawing { display: block; width: 100%; height: auto; }
.wide .drawing { min-width: 46rem; }
.chart .drawing { min-width: 38rem; max-width: 58rem; }
.key .drawing { min-width: 22rem; max-width: 30rem; }
.tall .drawing, .depths .drawing { min-width: 22rem; max-width: 44rem; }
.beside { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(18rem, 100%), 1fr)); gap: 1rem 2rem; align-items: start; }
.key-and-side { display: grid; gap: 1rem 2rem; align-items: start; }
.key-and-side figure, .beside figure { min-width: 0; }
@media (min-width: 60rem) {
  .key-and-side { grid-template-columns: 1fr 1fr; }
  .tall { grid-column: 2; grid-row: 1 / span 2; }
}
.made { margin-top: 2.5rem; color: var(--quiet); }
@media screen {
  .line { white-space: nowrap; }
}
@media (max-width: 30rem) {
  dl { grid-template-columns: 1fr; gap: 0; }
  dd { margin-bottom: 0.6rem; }
}
@media screen and (prefers-color-scheme: dark) {
  :root { --paper: #1b1d20; --ink: #f2f2ee; --quiet: #bdb9b0; --rule: #56585c; --wash: #26292d; --mark: #f2f2ee; }
${nightDrawing}
}
@page { margin: 14mm 12mm; }
@media print {
  :root { --paper: #ffffff; --ink: #000000; --quiet: #333333; --rule: #999999; --wash: #ffffff; --mark: #000000; }
  html { font-size: 10pt; line-height: 1.35; }
  body { max-width: none; padding: 0; }
  nav, .move, dialog[open] { display: none; }
  .scroll { overflow: visible; }
  h2, h3, caption, .verdict { break-after: avoid; }
  h2 { margin-top: 8mm; }
  figure, tr, li, dl, .take-care, .short { break-inside: avoid; }
  thead { display: table-header-group; }
  table { font-size: 8.5pt; }
  td.lines, th.lines { min-width: 0; }
  th, td { padding: 0.8mm 3mm 0.8mm 0; }
  .wide .drawing, .chart .drawing, .key .drawing, .tall .drawing, .depths .drawing { min-width: 0; }
  .verdict { font-size: 1.5rem; }
  .wide .drawing { max-height: 95mm; }
  .key-and-side { grid-template-columns: 70mm 1fr; gap: 0 4mm; break-inside: avoid; }
  .tall { grid-column: 2; grid-row: 1 / span 2; }
  .tall .drawing { max-width: none; max-height: 135mm; }
  .beside { grid-template-columns: repeat(3, 1fr); gap: 4mm 6mm; }
}
`;
