import { verify } from "../verify.ts";
import { BEAMS } from "./families.ts";

verify(BEAMS);
