import { verify } from "../verify.ts";
import { LAMINATES } from "./families.ts";

verify(LAMINATES);
