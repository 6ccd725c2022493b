/** Style of the first screen: the answer and its picture, then calmer what else is worth knowing. */
export const VERDICT_STYLE = `
.verdict { display: grid; gap: .8rem; grid-template-columns: minmax(0, 1fr); }
.verdict .picture { grid-row: 2; }
.verdict h2 { font-size: clamp(1.3rem, 1.05rem + 1.1vw, 2rem); font-weight: 500; margin: 0; max-width: 26em; }
.verdict .matters { font-size: 1.1rem; margin-top: 0; }
.picture, .side-picture { margin: 0; min-width: 0; }
.tile-key { display: flex; flex-wrap: wrap; gap: .1rem 1.2rem; align-items: end; margin: .3rem 0; }
.tile-scale { display: flex; align-items: end; gap: .15rem .8rem; margin: 0; line-height: 1.2; }
.tile-scale span { display: grid; justify-items: center; font-size: .9rem; }
.tile-scale svg { width: 1.4rem; height: 1.4rem; }
.tile-scale rect { stroke: var(--muted); stroke-width: .6; }
.picture figcaption p { margin: .3rem 0; font-size: .9rem; max-width: none; }
.beside { display: grid; gap: 0 3rem; grid-template-columns: minmax(0, 1fr); margin-top: .8rem; }
.beside p { max-width: 40rem; }
@media (min-width: 60rem) {
  .verdict { grid-template-columns: minmax(0, 5fr) minmax(0, 6fr); grid-template-rows: auto auto 1fr auto; column-gap: 3rem; }
  .verdict .picture { grid-column: 2; grid-row: 1 / 4; }
  /* Words run on in the left column, pictures in the right one. */
  .beside { display: contents; }
  .beside > div:first-child { grid-column: 1; grid-row: 3 / 5; }
  .beside > div:last-child { grid-column: 2; grid-row: 4; }
}
@media screen { #plan { max-height: min(38rem, 64vh); } }
.beside .facts { grid-template-columns: repeat(2, minmax(0, 1fr)); }
@media (min-width: 44rem) {
  .beside .facts { grid-template-columns: repeat(4, minmax(0, 1fr)); }
}
`;
