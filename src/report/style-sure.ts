/** Rules for bars with names above them, suggestions, and tables that become cards on phones. */

export const SURE_STYLE = `
.helps { padding-left: 1.2rem; }
.helps li { margin: .6rem 0; }
.helps code { user-select: all; }
.cards code { user-select: all; }
.cards td ul.plain { max-width: none; }
.chart.named { height: calc(5.2rem + var(--rows) * 3.4rem); }
.small-charts { display: grid; gap: 1.2rem 1.5rem; grid-template-columns: repeat(auto-fill, minmax(min(100%, 24rem), 1fr)); }
.small-charts h3 { margin: .4rem 0 .4rem; font-size: 1rem; }
@media screen and (max-width: 700px) {
  .cards, .cards caption, .cards tbody, .cards tr { display: block; }
  .cards thead { display: none; }
  .cards tr { padding: .6rem .8rem; border-top: 2px solid var(--line); }
  .cards th, .cards td { display: block; border: 0; padding: .15rem 0; }
  .cards .number { text-align: left; white-space: normal; padding-left: 0; }
  .cards .number + :is(td, th):not(.number) { padding-left: 0; }
  .cards [data-label] { display: grid; grid-template-columns: minmax(0, 9rem) minmax(0, 1fr); gap: 0 .8rem; }
  .cards [data-label]::before { content: attr(data-label); color: var(--muted); font-size: .88rem; grid-row: 1 / 9; }
  .cards [data-label] > * { grid-column: 2; }
  .cards th[scope=row] { font-weight: 600; }
  .cards tr.chosen, .cards tr.chosen :is(th, td) { background: var(--accentSoft); }
}
`;
