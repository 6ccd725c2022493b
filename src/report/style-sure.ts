/** Rules for bars with names above them, suggestions, and tables that become cards on phones. */

export const SURE_STYLE = `
.helps { padding-left: 1.2rem; }
.helps li { margin: .6rem 0; }
.helps code { user-select: all; }
.cards code { user-select: all; }
.chart.named { height: calc(5.2rem + var(--rows) * 3.4rem); }
.small-charts { display: grid; gap: 1.2rem 1.5rem; grid-template-columns: repeat(auto-fill, minmax(min(100%, 24rem), 1fr)); }
.small-charts h3 { margin: .4rem 0 .4rem; font-size: 1rem; }
`;
