import type { Family } from "../case.ts";
import { ABSORBER } from "./absorber.ts";
import { ALTERED_CHAIN } from "./altered-chain.ts";
import { CHAIN_SPECTRA } from "./chain-spectra.ts";
import { CROSSINGS } from "./crossings.ts";
import { HALF_POWER } from "./half-power.ts";
import { ONE_DEGREE } from "./one-degree.ts";
import { RIGID_CRAFT } from "./rigid-craft.ts";
import { UNBALANCE } from "./unbalance.ts";

export const DYNAMICS: readonly Family[] = [
  UNBALANCE,
  ONE_DEGREE,
  HALF_POWER,
  CROSSINGS,
  CHAIN_SPECTRA,
  ALTERED_CHAIN,
  RIGID_CRAFT,
  ABSORBER,
];
