import type { Family } from "../case.ts";

export const SENSING: readonly Family[] = [];
