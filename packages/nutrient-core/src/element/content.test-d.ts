/** Compiled, never run: each line that must not compile says so, and breaks the build the day it does. */
import { addContents, asOxide, percentOf } from "./content.ts";

addContents(percentOf("P", 1), percentOf("P", 2));
// @ts-expect-error phosphorus and phosphorus pentoxide are different kinds
addContents(percentOf("P", 1), percentOf("P2O5", 2));
// @ts-expect-error two shares are no numbers: `+` does not add them
percentOf("P", 1) + percentOf("P2O5", 2);
asOxide(percentOf("K", 1), "K2O");
// @ts-expect-error potassium has no phosphorus oxide
asOxide(percentOf("K", 1), "P2O5");
