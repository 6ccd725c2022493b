/** The data that a page carries for its script. */

import { gunzipSync } from "node:zlib";
import type { PageData } from "../../src/report/client/types.ts";

export function pageDataOf(html: string): PageData {
  const packed = /<script type="text\/plain" id="report-data">([^<]*)<\/script>/.exec(html)?.[1];
  if (packed === undefined) throw new Error("the page has no data");
  return JSON.parse(gunzipSync(Buffer.from(packed, "base64")).toString()) as PageData;
}
