/** Style of the drawings; lengths are millimetres of the frame except stroke widths, in pixels. */
export const DRAWING_STYLE = `
.drawing { display: block; width: 100%; height: auto; max-height: 38rem; }
#side { max-height: 20rem; }
.drawing * { vector-effect: non-scaling-stroke; }
.drawing text { font-family: system-ui, "Liberation Sans", sans-serif; }
.plate { fill: var(--plate); fill-opacity: .3; fill-rule: evenodd; stroke: var(--ink); stroke-width: 1.3; }
.plate.edge { fill-opacity: .9; stroke-width: .8; }
.arm { fill: var(--arm); fill-opacity: .55; stroke: var(--ink); stroke-width: 1; }
.motor { fill: var(--surface); fill-opacity: .75; stroke: var(--muted); stroke-width: 1.3; }
.body { fill: none; stroke: var(--muted); stroke-width: 1; stroke-dasharray: 4 3; }
.propeller { fill: none; stroke: var(--line); stroke-width: 1.2; stroke-dasharray: 5 4; }
.standoff { fill: var(--surface); stroke: var(--ink); stroke-width: 1; }
.post { stroke: var(--ink); stroke-width: 3; }
.member { stroke: var(--ink); stroke-width: 2; }
.map-ground { fill: var(--surface); fill-rule: evenodd; }
.map-edge { fill: none; stroke: var(--ink); stroke-width: 1.5; }
.free-ground, .free-edge { fill: none; stroke-linecap: square; }
.free-ground { stroke: var(--surface); stroke-width: 3.5; }
.free-edge { stroke: var(--ink); stroke-width: 1.3; }
.best-ground, .best-box { fill: none; stroke-linejoin: round; }
.best-ground { stroke: var(--surface); stroke-width: 5.5; }
.best-box { stroke: var(--accent); stroke-width: 3; }
.hatch-ground { fill: var(--cautionSoft); fill-opacity: .2; }
.hatch-line { stroke: var(--caution); stroke-width: .9; vector-effect: none; }
.overhang { stroke: var(--caution); stroke-width: 2; }
.cg-ground { fill: var(--surface); stroke: var(--ink); stroke-width: 1.2; }
.cg-quarters { fill: var(--ink); }
.leader { stroke: var(--ink); stroke-width: 1.6; }
.leader-ground { stroke: var(--surface); stroke-width: 3.5; }
.place-dot { fill: var(--ink); stroke: var(--surface); stroke-width: 2; }
.place-dot.best { fill: var(--accent); }
.place-dot.avoid { fill: var(--caution); }
.mark { stroke-width: 2; }
.mark.best { fill: var(--accent); stroke: var(--surface); }
.mark-halo { fill: none; stroke: var(--accent); stroke-width: 2.5; }
.mark.fine { fill: var(--surface); stroke: var(--ink); }
.mark.avoid { fill: var(--cautionSoft); stroke: var(--caution); }
.mark-number { font-weight: 700; fill: var(--ink); }
.mark-number.best { fill: var(--onAccent); }
.mark-number.avoid { fill: var(--caution); }
.arrow { fill: none; stroke: var(--muted); stroke-width: 1.5; }
.note { fill: var(--muted); }
.inline-mark { width: 1.8em; height: 1.8em; vertical-align: -.55em; }
.inline-mark .overhang { stroke-width: 1; }
`;
