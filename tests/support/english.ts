import { textsOf } from "../../web/texts/compile.ts";
import { takeTexts } from "../../web/texts/say.ts";

// A test of words imports this first: no build made the texts for it.
takeTexts(textsOf("en"));
