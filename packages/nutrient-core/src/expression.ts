/** The second door: quantity expressions as text. Apart from the first, because it brings mathjs with it. */
export { readQuantity } from "./quantity/expression.ts";
