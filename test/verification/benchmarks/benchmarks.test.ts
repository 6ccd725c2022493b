import { verify } from "../verify.ts";
import { BENCHMARKS } from "./families.ts";

verify(BENCHMARKS);
