import { verify } from "../verify.ts";
import { PLATES } from "./families.ts";

verify(PLATES);
