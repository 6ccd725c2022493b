import type { Family } from "../case.ts";

export const DYNAMICS: readonly Family[] = [];
