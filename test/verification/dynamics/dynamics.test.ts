import { verify } from "../verify.ts";
import { DYNAMICS } from "./families.ts";

verify(DYNAMICS);
