import type { Family } from "../case.ts";

export const BEAMS: readonly Family[] = [];
