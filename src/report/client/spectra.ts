/** Levels against motor speed, and their controls. Runs in the page: gets from outside what it is handed. */

import type { SpectraData } from "../spectra-data.ts";
import type { Fitting } from "./figures.ts";
import type { Tools } from "./tools.ts";
import type { Browser, Host, PageData } from "./types.ts";

/** Draws the levels at the chosen place, or of all places, and the map of a sweep. */
export function startSpectra(
  browser: Browser,
  data: PageData,
  spectra: SpectraData,
  tools: Tools,
  host: Host,
  fitting: Fitting,
): void {
  const { document } = browser;
  const all = (name: string) => Array.from(document.querySelectorAll(`input[name=${name}]`));
  const [boxes, quantities, views, places] = [
    "curve",
    "quantity",
    "spectra-view",
    "spectra-place",
  ].map(all);
  const chosen = () => ({
    quantity: quantities.some((s) => s.checked && s.value === "accel")
      ? ("accel" as const)
      : ("gyro" as const),
    together: views.some((s) => s.checked && s.value === "all"),
    place: Number(places.find((s) => s.checked)?.value ?? 0),
  });
  const words = document.getElementById("spectra-words");
  const levels = host.place("spectra-chart", (at, c) => {
    const { quantity, together, place } = chosen();
    const figure = together
      ? tools.allPlacesFigure(
          spectra,
          quantity,
          boxes.map((b) => b.checked),
          at.clientHeight / c.text,
          tools,
        )
      : tools.placeFigure(spectra, quantity, place, at.clientHeight / c.text, tools);
    return tools.drawFigure(at, figure, c, tools, fitting);
  });
  const map = host.place("sweep-chart", (at, c) => {
    const { quantity, place } = chosen();
    const scheme = c.theme.ink === data.themes.dark.ink ? "dark" : "light";
    return tools.drawFigure(
      at,
      tools.sweepFigure(spectra, quantity, place, scheme, at.clientHeight / c.text, tools),
      c,
      tools,
      fitting,
    );
  });
  const say = () => {
    const { quantity, together, place } = chosen();
    const { finding, findings, mapFindings } = spectra[quantity];
    const found = together ? finding : findings[place];
    if (words !== null) words.textContent = found;
    document.getElementById("spectra-chart")?.setAttribute("aria-label", found);
    document.getElementById("sweep-chart")?.setAttribute("aria-label", mapFindings[place]);
    const said = document.getElementById("sweep-words");
    if (said !== null) said.textContent = mapFindings[place];
  };
  const change = () => {
    say();
    levels.redraw();
    map.redraw();
  };
  for (const control of [...quantities, ...views, ...places]) {
    control.addEventListener("change", change);
  }
  for (const box of boxes) box.addEventListener("change", () => levels.redraw());
  // A browser that goes back keeps what was chosen.
  say();
}
