/** Style of the flat charts and what stands beside them. */
export const CHARTS_STYLE = `
.switches { display: flex; flex-wrap: wrap; gap: 0 2.4rem; }
.switches .switch { margin: .3rem 0; }
#spectra:has([name=spectra-view][value=all]:checked) #spectra-places { opacity: .6; }
#spectra:not(:has([name=spectra-view][value=all]:checked)) #spectra-curves { display: none; }
#spectra figcaption p { margin-top: .5rem; min-height: 2.9em; }
.open-mark { fill: var(--surface); stroke: var(--caution); stroke-width: 2; }
.chart.lever { height: clamp(20rem, min(92vw, 36rem), 36rem); }
.lever-layout { display: grid; gap: .6rem 2.4rem; grid-template-columns: minmax(0, 1fr); }
.causes tr:not(.first) :is(th, td) { border-top-style: dotted; }
.unit { color: var(--muted); font-size: .82em; }
@media (min-width: 60rem) { .lever-layout { grid-template-columns: minmax(0, 40rem) minmax(0, 1fr); align-items: start; } }
@media print {
  #spectra #spectra-curves { display: none; }
  .lever-layout { grid-template-columns: minmax(0, 1fr); }
}
`;
