import { verify } from "../verify.ts";
import { SENSING } from "./families.ts";

verify(SENSING);
