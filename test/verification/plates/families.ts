import type { Family } from "../case.ts";

export const PLATES: readonly Family[] = [];
