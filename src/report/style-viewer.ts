/** Style of the three-dimensional pictures and what stands around them. */
export const VIEWER_STYLE = `
.shape-chart { height: clamp(17rem, min(62vh, 92vw), 40rem); position: relative; overflow: hidden; }
.shape-chart canvas { display: block; width: 100%; height: 100%; touch-action: pan-y; cursor: grab; }
.shape-chart canvas:active { cursor: grabbing; }
.shape-chart canvas:focus-visible { outline-offset: -3px; }
.tip { position: absolute; max-width: min(19rem, 60%); padding: .25rem .6rem; pointer-events: none; font-size: .88rem;
  line-height: 1.35; color: var(--ink); background: var(--surface); border: 1px solid var(--muted); border-radius: 3px; }
.picture-hint { color: var(--muted); font-size: .88rem; margin: .3rem 0 0; }
.controls:has(+ .controls) { padding-bottom: 0; }
.views { align-items: center; }
.shape-chart + .controls { padding-top: .7rem; }
@media (max-width: 30rem) { .stage .controls { gap: .5rem .8rem; padding: .5rem 0 0; } .stage .controls button { padding: .2rem .6rem; } }
.steps { display: inline-flex; gap: .4rem; }
.controls .switch { margin: 0; }
.controls input[type=range] { width: 7.5rem; }
.motion-scale { display: flex; flex-wrap: wrap; gap: .1rem .6rem; align-items: center;
  color: var(--muted); font-size: .88rem; margin: .5rem 0 0; max-width: none; }
.motion-scale .strip { height: .9rem; width: 12rem; max-width: 40%; border: 1px solid var(--muted); }
.motion-scale .whole { flex-basis: 100%; }
.stage:has(#mode-by-turning:checked) .by-moving, .stage:not(:has(#mode-by-turning:checked)) .by-turning { display: none; }
.part-swatch { width: 1.9rem; height: .95rem; flex: none; }
.part-swatch :is(rect, ellipse) { stroke: var(--ink); stroke-width: .8; }
.part-swatch .stripes { stroke: var(--ink); stroke-width: 1.2; stroke-opacity: .55; }
.frame-stage { max-width: 62rem; margin: 1.2rem 0; }
@media print { .picture-hint, .tip { display: none; } }
`;
