import type { Family } from "../case.ts";

export const MEASURED: readonly Family[] = [];
