/** A comparison for people: what `compare` and `uncertainty` print. */

import type { ComparisonStudy } from "../../study/results.ts";
import { movedTogether } from "../../study/spread-groups.ts";
import type { BarSigns } from "../terminal/bar-signs.ts";
import type { Ink } from "../terminal/ink.ts";
import { printable } from "../terminal/printable.ts";
import { bullets, wrap } from "../terminal/wrap.ts";
import { crossingChangesText, modeChangesText, spotChangesText } from "./changes-text.ts";
import { warningsText } from "./modes-text.ts";
import { sampledModesText, sampledSpotsText } from "./sampled-text.ts";
import { surenessText } from "./sureness-text.ts";
import { variantsPlot, variantsTable } from "./variants-table.ts";

/** Warnings and heights told before the rest are counted. */
const TOLD = 6;

/** One variant alone: how sure it is where its modes lie and which spot is best. */
export function comparisonText(study: ComparisonStudy, ink: Ink, signs: BarSigns): string {
  const section = (title: string, body: string): string =>
    body === "" ? "" : `\n${ink.heading(title)}\n${body}`;
  const { variants, sure } = study;
  const [answer, ...more] = study.words;
  const alone = variants.length === 1;
  const middle = alone
    ? [
        section("Spots", sampledSpotsText(study, ink, signs)),
        section("Modes", sampledModesText(variants[0], ink)),
        section("Met near hover", crossingChangesText(study, ink)),
      ]
    : [
        section("Variants", variantsTable(study, ink)),
        section(`Modes against "${printable(variants[0].name)}"`, modeChangesText(study, ink)),
        section("Noise and filter delay at every spot", spotChangesText(study, ink)),
        section("Met near hover", crossingChangesText(study, ink)),
        section("Noise with its spread", variantsPlot(study, signs)),
      ];
  return [
    `${ink.heading(wrap(printable(study.title)).trimEnd())}\n\n`,
    answer === undefined ? "" : `${ink.best(wrap(printable(answer)).trimEnd())}\n`,
    more.map((text) => wrap(printable(text))).join(""),
    ...middle,
    section("How sure this is", sure ? surenessText(sure) : unsampled(alone)),
    warningsText(limited(warningsOf(study)), ink),
    section("Heights that followed", bullets(limited(heightsOf(study)))),
    section("Could not be built", bullets(limited(failuresOf(study)))),
  ].join("");
}

function unsampled(alone: boolean): string {
  const what = alone ? "its figures" : "whether a difference is real";
  return wrap(
    `Nothing was varied, so ${what} cannot be told from what scatters from frame to frame.`,
  );
}

/** Warnings, said once for all variants that have them. */
export function warningsOf({ variants }: Pick<ComparisonStudy, "variants">): string[] {
  const all = [...new Set(variants.flatMap((v) => v.outcome.warnings))];
  return all.map((text) => {
    const who = variants.filter((v) => v.outcome.warnings.includes(text));
    if (who.length === variants.length) return text;
    return `${who.map((v) => v.name).join(", ")}: ${text}`;
  });
}

function heightsOf({ variants }: ComparisonStudy): string[] {
  return variants.flatMap(({ name, outcome: { moved } }) =>
    moved.length === 0 ? [] : [printable(`${name}: ${movedTogether(moved).join("; ")}`)],
  );
}

function failuresOf({ failed }: ComparisonStudy): string[] {
  return failed.map(({ name, reason }) => printable(`${name}: ${reason}`));
}

function limited(texts: readonly string[]): string[] {
  const rest = texts.length - TOLD;
  return rest > 1 ? [...texts.slice(0, TOLD), `and ${rest} more, in the report`] : [...texts];
}
