/** The frame at rest, its parts told apart. Runs in the page: gets from outside only what it is handed. */

import type { Tools } from "./tools.ts";
import type { Browser, Host, ShapesData, Stage } from "./types.ts";
import type { Look, Scene } from "./viewer-types.ts";

/** Places the picture of the frame where the page has room for one. */
export function startFrame(
  browser: Browser,
  data: Pick<ShapesData, "frame">,
  tools: Tools,
  host: Host,
): void {
  const at = browser.document.getElementById("frame-chart");
  if (at === null) return;
  const { parts } = data.frame;
  const figure = at.closest("figure") as typeof at;
  const bodies = browser.document.getElementById("frame-bodies");
  const label = at.getAttribute("data-words") ?? "";
  const look = (scene: Scene): Look => {
    const reach = Math.max(...scene.high.map((h, k) => h - scene.low[k]));
    const theme = host.theme();
    const kinds = tools.kindColours(theme);
    const colours = scene.kinds.map((kind) => kinds[kind]);
    const through = bodies === null || bodies.checked ? 0.4 : 0;
    return {
      paint: {
        colours,
        table: tools.shadeTable(colours, 0.62),
        dimmest: 0.62,
        opacity: scene.kinds.map((kind) => (kind === "body" || kind === "stack" ? through : 1)),
        pattern: scene.kinds.map((kind) => (kind === "arm" ? 1 : 0)),
        ground: tools.rgbOf(theme.surface),
      },
      size: 0,
      ghost: false,
      theme,
      room: 0.04 * reach,
    };
  };
  const build = () => {
    const scene = tools.readScene(data.frame, tools.unpackIntegers);
    return tools.createStage(browser, tools, {
      at,
      scene,
      look: () => look(scene),
      say: ({ part }) => `${parts[part].name}: ${parts[part].words}`,
      label: () => label,
      buttons: figure.querySelectorAll("button[data-view], button[data-zoom]"),
    });
  };
  let stage: Stage | undefined;
  const place = host.place(
    "frame-chart",
    (_at, c) => {
      stage ??= build();
      stage.place(c);
    },
    {
      library: false,
      save: (format) => {
        stage ??= build();
        return stage.save(format);
      },
    },
  );
  bodies?.addEventListener("change", place.redraw);
}
