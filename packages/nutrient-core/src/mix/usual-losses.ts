/**
 * What is taken when the grower states no loss.
 *
 * Loss on mixing: the one published figure is 15 to 20 % for bark, peat and sand 3:1:1 (container-mix-guidance,
 * authority C); that mixing loses volume at all, and not in proportion, is measured (wur-mixing-model-2009, A, which prints
 * no percentage in what was read). The lower end is taken: a mix without sand has fewer fines. A single
 * material is mixed with nothing and loses nothing.
 *
 * Settling: no measured figure was found. A garden book's rule is 15 to 20 % more loose material for firming and
 * wetting (firming-rule, B), that is 13 to 17 % of what is put in, and says nothing of what mixing took before. 10 %
 * is an assumption of this library, and is said to be one each time it is used.
 */
export const USUAL_LOSS_SHARE = 0.15;
export const USUAL_SETTLING_SHARE = 0.1;

/** Between these the published figures lie; an order volume is shown with the range they make. */
export const LOSS_SHARE_RANGE: readonly [number, number] = [0.15, 0.2];
/** From nothing (a container filled level and topped up later) to the upper published rule, 0.2 / 1.2. */
export const SETTLING_SHARE_RANGE: readonly [number, number] = [0, 0.2 / 1.2];
