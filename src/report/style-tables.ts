/** Tables: rows with lines under them, and cards on a narrow page. */

export const TABLE_STYLE = `
.place { display: inline-flex; gap: .6rem; align-items: flex-start; }
.place .inline-mark { flex: none; }
.ranking th[scope=row] { min-width: 11rem; }
.ranking :is(thead .number, small.axis) { white-space: normal; }
.level { display: block; min-width: 9rem; max-width: 16rem; }
.bar { display: block; position: relative; height: 6px; margin-top: .35rem;
  background: linear-gradient(90deg, var(--accent) calc(100% * var(--share)), var(--sunken) 0); }
.bar.range::after { content: ""; position: absolute; top: -2px; bottom: -2px; left: calc(100% * var(--low));
  width: calc(100% * (var(--high) - var(--low))); border: solid var(--ink); border-width: 0 1.5px;
  background: linear-gradient(var(--ink), var(--ink)) 0 50% / 100% 1.5px no-repeat; }
tr.avoid .bar { background: linear-gradient(90deg, var(--caution) calc(100% * var(--share)), var(--sunken) 0); }
tr.under td { border-top: 0; padding-top: 0; padding-bottom: .7rem; }
.ranking tr.under td { padding-left: 3rem; }
tr.best, tr.best + tr.under { background: var(--accentSoft); }
tr.best small { color: inherit; }
.flags { list-style: none; margin: 0; padding: 0; max-width: none; font-size: .95em; }
.flags li { margin: .1rem 0; }
.flags + details { margin: .1rem 0 0; font-size: .95em; }
.flags + details summary { padding: .1rem 0; width: fit-content; }
.flags + details ul { margin: .2rem 0; padding-left: 1.2rem; max-width: 52rem; color: var(--muted); }
dl.words div { display: grid; grid-template-columns: minmax(0, 11rem) minmax(0, 1fr); gap: 0 1.5rem;
  border-top: 1px solid var(--line); padding: .3rem 0; break-inside: avoid; }
dl.words dt { font-weight: 600; scroll-margin-top: 4rem; }
dl.words dd { margin: 0; }
@media (min-width: 75rem) { dl.words { columns: 2; column-gap: 3rem; } }
@media print { tr:has(+ tr.under) { break-after: avoid; } tr.under td { padding-left: .4rem; } }
@media screen and (max-width: 60rem) {
  .cards, .cards caption, .cards tbody { display: block; }
  .cards thead { display: none; }
  .cards tr { display: grid; grid-template-columns: repeat(auto-fill, minmax(8.5rem, 1fr)); gap: .5rem 1rem;
    padding: .7rem .8rem; border-top: 2px solid var(--line); }
  .cards th, .cards td { display: block; border: 0; padding: 0; min-width: 0; }
  .cards th[scope=row], .cards td.wide, .cards td.long { grid-column: 1 / -1; }
  .cards tr.under { border-top: 0; padding-top: 0; }
  .cards tr.under, .cards tr.under td { display: block; padding-left: 0; }
  .cards tr.under { padding-left: .8rem; padding-bottom: .7rem; }
  .cards tr.under td { padding-bottom: 0; }
  .cards .number { text-align: left; white-space: normal; }
  .cards [data-label]::before { content: attr(data-label); display: block; color: var(--muted); font-size: .85rem; }
  table.cards tr > :is(td, th):nth-child(n) { padding: 0; }
  .cards td:empty { display: none; }
}
@media screen and (max-width: 44rem) {
  .masses :is(th, td) { padding-left: .35rem; padding-right: .35rem; }
  :is(dl.words, .rows) div { grid-template-columns: minmax(0, 1fr); }
}
`;
