import { verify } from "../verify.ts";
import { MEASURED } from "./families.ts";

verify(MEASURED);
