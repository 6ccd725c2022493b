/** Figures as files to show elsewhere. Runs in the page: gets from outside only what it is handed. */

import type { Browser, Element, PageData, SavingHost } from "./types.ts";

/** Connects all buttons with data-save="svg" or "png" and data-of, the id of a figure. */
export function startSaving(browser: Browser, data: PageData, host: SavingHost): void {
  const { document } = browser;
  const plain = (text: string) => text.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "");
  const escaped = (text: string) =>
    text.replace(/[&<>]/g, (c) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;" })[c] as string);

  /** A drawing of the page as it looks now, alone: its style rules become attributes. */
  const drawingAlone = (drawing: Element): string => {
    const copy = drawing.cloneNode(true);
    const copies = [copy, ...copy.querySelectorAll("*")];
    const taken = [
      ...["fill", "fill-opacity", "fill-rule", "stroke", "stroke-width", "stroke-dasharray"],
      ...["stroke-opacity", "opacity", "display", "vector-effect"],
      ...["font-family", "font-weight", "font-size", "text-anchor"],
    ];
    [drawing, ...drawing.querySelectorAll("*")].forEach((part, i) => {
      const style = browser.getComputedStyle(part);
      for (const name of taken) copies[i].style.setProperty(name, style.getPropertyValue(name));
    });
    copy.setAttribute("width", String(drawing.clientWidth));
    copy.setAttribute("height", String(drawing.clientHeight));
    copy.style.setProperty("background", host.theme().paper);
    return new browser.XMLSerializer().serializeToString(copy);
  };
  const svgUrl = (svg: string) => `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  const asPng = (svg: string, width: number, height: number) =>
    new Promise<string>((ready, fail) => {
      const image = new browser.Image();
      image.addEventListener("error", () => fail(new Error("the drawing cannot be painted")));
      image.addEventListener("load", () => {
        const canvas = document.createElement("canvas");
        canvas.width = 2 * width;
        canvas.height = 2 * height;
        canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
        ready(canvas.toDataURL("image/png"));
      });
      image.src = svgUrl(svg);
    });
  /** With a line above that says what it is, since it will stand without its page. */
  const plotted = (at: Element, format: "svg" | "png", what: string): Promise<string> => {
    const { layout, data: traces } = at as Required<Element>;
    const theme = host.theme();
    const [width, lines] = [at.clientWidth, [] as string[]];
    // What it shows, in the words of its label, in lines of about this many signs.
    const wide = Math.max(30, Math.floor(width / 6.2));
    for (const word of (at.getAttribute("aria-label") ?? "").split(" ")) {
      const last = lines[lines.length - 1];
      if (last !== undefined && last.length + word.length < wide)
        lines[lines.length - 1] += ` ${word}`;
      else lines.push(word);
    }
    const room = 34 + 16 * lines.length;
    const margin = { ...layout.margin, t: (layout.margin?.t ?? 0) + room };
    const title = {
      text: [
        `${escaped(data.name)}: ${escaped(what)}`,
        ...lines.map((line) => `<span style="font-size:12px">${escaped(line)}</span>`),
      ].join("<br>"),
      x: 0,
      xref: "paper",
      xanchor: "left",
      y: 1,
      yref: "container",
      yanchor: "top",
      pad: { t: 10, l: 4 },
      font: { size: 15, color: theme.ink },
    };
    const height = at.clientHeight + room;
    const alone = { ...layout, margin, title, width, height, paper_bgcolor: theme.surface };
    return browser.Plotly.toImage(
      { data: traces, layout: alone },
      { format, width, height, scale: format === "png" ? 2 : 1 },
    );
  };
  const image = async (at: Element, id: string, format: "svg" | "png", what: string) => {
    if (at.namespaceURI.endsWith("/svg")) {
      const svg = drawingAlone(at);
      return format === "svg" ? svgUrl(svg) : asPng(svg, at.clientWidth, at.clientHeight);
    }
    const figure = await host.drawn(id);
    if (figure?.save) return figure.save(format);
    if (at.data === undefined) throw new Error("The figure is not drawn, so it cannot be saved.");
    return plotted(at, format, what);
  };
  for (const button of document.querySelectorAll("button[data-save]")) {
    button.addEventListener("click", async () => {
      const { of: id, save: format } = button.dataset;
      const at = document.getElementById(id);
      const said = button.closest(".save")?.querySelector("[role=status]");
      if (at === null || !said) return;
      const what = at.closest("section")?.querySelector("h2")?.textContent ?? id;
      try {
        const link = document.createElement("a");
        link.href = await image(at, id, format as "svg" | "png", what);
        link.download = `${plain(`${data.name} ${id.replace(/-chart$/, "")}`)}.${format}`;
        link.click();
        said.textContent = "";
      } catch (problem) {
        said.textContent = (problem as Error).message;
      }
    });
  }
}
