/** The cautions of solutions: what to heed in a can, on a bed and in a stock tank. */
export { feedCautions, nitrogenFormCautions } from "./feed-cautions.ts";
export { stockCautions } from "./stock-cautions.ts";
