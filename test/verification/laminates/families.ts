import type { Family } from "../case.ts";

export const LAMINATES: readonly Family[] = [];
