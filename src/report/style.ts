/** The style sheet: one column for reading, wide figures, quiet colours; screen and paper. */

import { customProperties, DARK, LIGHT } from "./palette.ts";
import { CHARTS_STYLE } from "./style-charts.ts";
import { DRAWING_STYLE } from "./style-drawing.ts";
import { SURE_STYLE } from "./style-sure.ts";
import { TABLE_STYLE } from "./style-tables.ts";
import { VERDICT_STYLE } from "./style-verdict.ts";
import { VIEWER_STYLE } from "./style-viewer.ts";

const BASE = `
* { box-sizing: border-box; }
/* Text grows a little with the window, from a laptop's to a wall's. */
html { font-size: clamp(100%, 72% + .35vw, 150%); -webkit-text-size-adjust: 100%; scroll-behavior: smooth; scroll-padding-top: 1rem; }
body { margin: 0; background: var(--paper); color: var(--ink);
  font: 1rem/1.55 system-ui, -apple-system, "Segoe UI", "Liberation Sans", sans-serif;
  overflow-wrap: break-word; font-variant-numeric: tabular-nums; }
header, main, footer, nav { padding: 0 clamp(1rem, 4vw, 3rem); }
main, footer { max-width: 92rem; }
h1, h2, h3 { font-family: Charter, "Bitstream Charter", "Iowan Old Style", Georgia, "Liberation Serif", serif;
  line-height: 1.2; text-wrap: balance; font-weight: 600; }
h1 { font-size: 1.05rem; margin: 0; }
h2 { font-size: 1.7rem; margin: 0 0 .4rem; }
h3 { font-size: 1.15rem; margin: 1.8rem 0 .5rem; }
p, ul, ol { max-width: 46rem; }
p { margin: .5rem 0; }
small { font-size: .82em; color: var(--muted); font-weight: 400; }
a { color: var(--accent); text-underline-offset: .2em; }
code, li bdi, label bdi { overflow-wrap: anywhere; }
code { font-family: ui-monospace, "Liberation Mono", monospace; font-size: .9em; }
:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; border-radius: 2px; }
.skip { position: absolute; left: -99rem; }
.skip:focus { left: 1rem; top: 1rem; background: var(--surface); padding: .5rem 1rem; z-index: 2; }
.spoken { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
.quiet, .waiting { color: var(--muted); }
header { display: flex; flex-wrap: wrap; gap: .1rem 1.2rem; align-items: baseline; padding-top: .8rem; padding-bottom: .2rem; }
header p { margin: 0; color: var(--muted); }
nav ul { list-style: none; padding: 0; margin: 0; max-width: none; }
nav > ul { display: flex; flex-wrap: wrap; gap: 0 1.3rem; padding: .2rem 0 .5rem; }
nav ul ul { display: none; }
nav a { display: inline-block; padding: .25rem 0; text-decoration: none; }
nav a:hover { text-decoration: underline; }
main > section { padding: 2.4rem 0 1.4rem; border-top: 1px solid var(--line); }
main > #verdict, main > section:first-child { padding-top: 1.4rem; }
.finding { max-width: 52rem; font-size: 1.06rem; margin-bottom: .4rem; }
.lead { color: var(--muted); max-width: 52rem; margin-bottom: 1.2rem; font-size: .95rem; }
dl.words { columns: 26rem; column-gap: 3rem; }
dl.words dt { font-weight: 600; }
dl.words dd { margin: 0 0 .7rem; color: var(--muted); }
dl.words > div { break-inside: avoid; }
.term { color: inherit; text-decoration: underline dotted var(--muted); }
.term:hover { color: var(--accent); }
.word-note { position: fixed; inset: auto; margin: 0; width: min(24rem, calc(100vw - 1rem)); padding: .8rem 1rem; color: var(--ink);
  background: var(--surface); border: 1px solid var(--muted); border-radius: 4px; box-shadow: 0 .4rem 1.4rem rgb(0 0 0 / .22); }
.word-note p { margin: 0 0 .3rem; }
.save { display: flex; gap: .4rem; justify-content: flex-end; align-items: center; max-width: none; margin: .25rem 0 0; color: var(--muted); font-size: .8rem; }
.save button { min-height: 1.6rem; padding: .05rem .5rem; color: var(--muted); background: none; border-color: var(--line); }
.save button:hover { color: var(--ink); background: var(--sunken); }
@media (min-width: 44rem) and (min-height: 30rem) {
  html { scroll-padding-top: 3.4rem; }
  nav { position: sticky; top: 0; z-index: 3; background: var(--paper); border-bottom: 1px solid var(--line); }
  main > section:first-child { border-top: 0; }
}
@media (min-width: 84rem) {
  html { scroll-padding-top: 1rem; }
  body { display: grid; grid-template-columns: 13.5rem minmax(0, 1fr); grid-template-rows: auto 1fr auto; }
  header { grid-column: 1 / 3; }
  nav { grid-column: 1; grid-row: 2 / 4; align-self: start; max-height: 100vh; overflow-y: auto;
    padding: 1.4rem .5rem 1rem clamp(1rem, 4vw, 3rem); border-bottom: 0; font-size: .92rem; }
  main, footer { grid-column: 2; padding-left: 1.5rem; width: 100%; }
  nav > ul { display: block; padding: 0; }
  nav ul ul { display: block; margin: 0 0 .6rem; padding-left: .8rem; border-left: 1px solid var(--line); }
  nav ul ul a { padding: .1rem 0; color: var(--muted); }
  nav a[aria-current] { font-weight: 600; color: var(--ink); }
}
.notes { color: var(--muted); font-size: .92rem; }
.warnings { border-left: 5px solid var(--caution); background: var(--cautionSoft); padding: .2rem 1.2rem .6rem; margin: 1rem 0; }
.warnings h3 { margin-top: .6rem; }
.on-paper { display: none; }
footer { color: var(--muted); padding-top: 1.5rem; padding-bottom: 3rem; }
`;

const VERDICT = `
.places { list-style: none; padding: 0; margin: .8rem 0 .4rem; }
.places li { display: flex; gap: .4rem; align-items: flex-start; margin: .15rem 0; }
.places .inline-mark { flex: none; }
.remarks ul { padding-left: 1.2rem; margin: .9rem 0 0; color: var(--muted); font-size: .95rem; }
.remarks li { margin: .25rem 0; }
.key { display: flex; flex-wrap: wrap; gap: .2rem 1.2rem; color: var(--muted); font-size: .9rem; }
.facts { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(9.5rem, 44%), 1fr)); gap: .9rem 1.6rem; margin: 1.4rem 0; }
.facts div { border-top: 2px solid var(--line); padding-top: .35rem; min-width: 0; }
.facts dt { color: var(--muted); font-size: .85rem; }
.facts dd { margin: 0; font-size: 1.12rem; }
.facts dd small { display: block; }
`;

const TABLES = `
.table-box { overflow-x: auto; margin: 1.2rem 0; border: 1px solid var(--line);
  /* A shadow at each edge, which a cover that scrolls along hides where the table ends. */
  background: linear-gradient(90deg, var(--surface) 1.5rem, transparent) 0 0 / 3rem 100% no-repeat local,
    linear-gradient(270deg, var(--surface) 1.5rem, transparent) 100% 0 / 3rem 100% no-repeat local,
    linear-gradient(90deg, var(--line), transparent) 0 0 / 1.1rem 100% no-repeat scroll,
    linear-gradient(270deg, var(--line), transparent) 100% 0 / 1.1rem 100% no-repeat scroll, var(--surface); }
table { border-collapse: collapse; width: 100%; font-size: .94rem; line-height: 1.4; }
caption { text-align: left; padding: .6rem .8rem; color: var(--muted); font-size: .88rem; }
th, td { text-align: left; vertical-align: top; padding: .45rem .65rem; border-top: 1px solid var(--line); font-weight: 400; }
thead th { color: var(--muted); font-size: .85rem; vertical-align: bottom; border-bottom: 2px solid var(--line); }
.number { text-align: right; white-space: nowrap; }
.number + :is(td, th):not(.number) { padding-left: 1.8rem; }
td ul.plain, td ul.plain li { list-style: none; padding: 0; margin: 0 0 .35rem; }
.by-place th[scope=row] { min-width: 8rem; }
.by-place td { min-width: 6rem; }
.by-place tr.first th, .by-place tr.first td { border-top-width: 2px; }
.axis { display: block; }
.long { min-width: 15rem; }
.hard { color: var(--caution); }
tr.near th, tr.near td { background: var(--cautionSoft); }
tr.chosen th, tr.chosen td { background: var(--accentSoft); }
.masses td, .masses th { padding-top: .25rem; padding-bottom: .25rem; }
details { margin: .8rem 0; }
summary { cursor: pointer; color: var(--accent); padding: .3rem 0; }
`;

const CHARTS = `
figure { margin: 0; min-width: 0; }
.chart { background: var(--surface); border: 1px solid var(--line); min-width: 0; overflow: clip; }
.chart.tall { height: clamp(22rem, 60vh, 38rem); }
.chart.bars { height: calc(4.4rem + var(--rows) * 3.4rem); }
.maps { display: grid; gap: 1rem 1.5rem; grid-template-columns: repeat(auto-fill, minmax(min(100%, 19rem), 1fr)); }
.maps h3 { margin: .6rem 0 .4rem; }
.map-chart { height: clamp(20rem, 58vh, 34rem); }
.square-mark { fill: var(--plate); }
.square-mark.free { stroke: var(--ink); stroke-width: 2.2; }
#map-words { margin: .6rem 0; min-height: 3.2em; }
.waiting { padding: 1rem; }
.modes-layout { display: grid; gap: 1.2rem 2rem; grid-template-columns: minmax(0, 1fr); }
.modes-layout .table-box { margin: 0; max-height: 46rem; overflow-y: auto; position: relative; align-self: start; }
.modes thead th { position: sticky; top: 0; background: var(--surface); }
.choice { display: inline-flex; gap: .4rem; align-items: center; padding: .1rem .3rem .1rem 0; cursor: pointer; }
.modes tr:has(input:checked) { background: var(--accentSoft); }
.stage figcaption { min-height: 4.8em; padding-top: .3rem; }
.controls { display: flex; flex-wrap: wrap; gap: .6rem 1.1rem; align-items: center; padding: .7rem 0 .3rem; }
.controls label { display: inline-flex; gap: .4rem; align-items: center; }
.views { display: inline-flex; flex-wrap: wrap; gap: .4rem; }
button { font: inherit; color: var(--ink); background: var(--surface); border: 1px solid var(--muted);
  border-radius: 3px; padding: .3rem .8rem; cursor: pointer; min-height: 2.2rem; }
button:hover { background: var(--sunken); }
#mode-play { min-width: 5.5rem; background: var(--accent); border-color: var(--accent); color: var(--onAccent); }
input { accent-color: var(--accent); }
input[type=radio], input[type=checkbox] { width: 1.1rem; height: 1.1rem; flex: none; margin: 0; }
.switch { border: 0; padding: 0; margin: .6rem 0; display: flex; flex-wrap: wrap; gap: .4rem 1.3rem; min-width: 0; }
.switch legend { float: left; color: var(--muted); padding: 0 1rem 0 0; }
.switch label, .legend li { display: inline-flex; gap: .45rem; align-items: center; }
.legend { display: flex; flex-wrap: wrap; gap: .3rem 1.4rem; list-style: none; padding: 0; max-width: none; }
.swatch { width: 2.1rem; height: .7rem; flex: none; }
.symbol { width: 1rem; height: 1rem; flex: none; }
.near-mark { fill: var(--caution); }
.star-mark { fill: var(--surface); stroke: var(--ink); stroke-width: 1.3; }
.dot-mark { fill: var(--ink); }
.cross-mark { fill: var(--surface); stroke: var(--ink); stroke-width: 1.3; }
.avoid-mark { stroke: var(--caution); stroke-width: 2.5; }
.other-mark { fill: none; stroke: var(--ink); stroke-width: 2; }
.columns { display: grid; gap: 0 3rem; grid-template-columns: repeat(auto-fit, minmax(min(100%, 24rem), 1fr)); }
.columns h3 { margin-top: .4rem; }
.rows { margin: 1rem 0; }
.rows div { display: grid; grid-template-columns: minmax(0, 12rem) minmax(0, 1fr); gap: 0 1.5rem; border-top: 1px solid var(--line); padding: .3rem 0; }
.rows dt { color: var(--muted); }
.rows dd { margin: 0; }
@media (min-width: 70rem) {
  .modes-layout { grid-template-columns: minmax(0, 3fr) minmax(0, 2fr); }
}
`;

const PAPER = `
@media print {
  :root { ${customProperties({ ...LIGHT, paper: "#ffffff", surface: "#ffffff" })} color-scheme: light; }
  html { font-size: 9pt; }
  header, main, footer { max-width: none; padding-left: 0; padding-right: 0; }
  .maps { grid-template-columns: repeat(2, minmax(0, 1fr)); }
  @page { margin: 14mm 15mm 16mm; }
  body { display: block; }
  nav, .controls, .switch:not(.legend), .skip, .save, .word-note { display: none; }
  .chart { break-inside: avoid; }
  main > section { padding: 1.4rem 0 .6rem; }
  .chart > *, .chart .svg-container { max-width: 100%; }
  .table-box, .modes-layout .table-box { overflow: visible; max-height: none; }
  .modes-layout, .verdict { grid-template-columns: minmax(0, 1fr); }
  .drawings { max-width: 14cm; }
  .number { white-space: normal; }
  .by-place td, .by-place th[scope=row] { min-width: 0; }
  th, td { padding: .25rem .4rem; }
  tr, figure, .facts div { break-inside: avoid; }
  h2, h3, caption { break-after: avoid; }
  figure:has(.maps) { break-inside: auto; }
  .maps > div { break-inside: avoid; }
  .modes thead th { position: static; }
  .on-paper { display: block; }
  details:not([open]) { display: none; }
  details > summary { color: var(--muted); list-style: none; font-weight: 600; }
  * { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}
@media (prefers-reduced-motion: reduce) { html { scroll-behavior: auto; } }
@media (forced-colors: active) { .bar { display: none; } }
`;

export function styleSheet(): string {
  return [
    `:root { ${customProperties(LIGHT)} color-scheme: light dark; }`,
    `@media (prefers-color-scheme: dark) { :root { ${customProperties(DARK)} } }`,
    BASE,
    VERDICT,
    VERDICT_STYLE,
    DRAWING_STYLE,
    TABLES,
    TABLE_STYLE,
    CHARTS,
    CHARTS_STYLE,
    SURE_STYLE,
    VIEWER_STYLE,
    PAPER,
  ].join("\n");
}
