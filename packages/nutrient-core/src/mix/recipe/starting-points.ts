/** A published recipe to start from. Its text is read like any other, so it is also an example of how to write one. */
export interface StartingPoint {
  readonly id: string;
  /** What it is, in a few words. */
  readonly about: string;
  readonly recipe: string;
  readonly source: string;
}

/** Rates per US cubic yard or per 9 L as the source prints them; where it prints a range, the lower end stands here. */
export const STARTING_POINTS: readonly StartingPoint[] = [
  {
    id: "light-thirds",
    about: "equal parts of compost, perlite and coir; light and free-draining",
    recipe: "compost 1, perlite 1, coir 1",
    source: "common-practice",
  },
  {
    id: "compost-peat-vermiculite",
    about: "equal parts of compost, peat and vermiculite",
    recipe: "compost 1, peat 1, vermiculite 1",
    source: "common-practice",
  },
  {
    id: "peat-vermiculite",
    about: "soilless mix for young plants",
    recipe:
      "peat 1, vermiculite 1 + dolomitic lime 5 lb/cu yd + superphosphate 1 lb/cu yd + potassium nitrate 1 lb/cu yd + trace elements 2 oz/cu yd",
    source: "horticulture-table-4-11",
  },
  {
    id: "peat-vermiculite-fed",
    about: "soilless mix with a full starter feed",
    recipe: "peat 1, vermiculite 1 + superphosphate 2.5 lb/cu yd + 5-10-10 5 lb/cu yd + dolomitic lime 10 lb/cu yd",
    source: "rutgers-table-r4",
  },
  {
    id: "peat-sand",
    about: "three parts peat to one of sand, limed",
    recipe:
      "peat 3, sand 1 + hoof and horn 2.5 lb/cu yd + potassium nitrate 0.25 lb/cu yd + superphosphate 2 lb/cu yd + dolomitic lime 5 lb/cu yd + calcium carbonate 4 lb/cu yd",
    source: "uc-davis-mix-d",
  },
  {
    id: "loam-1",
    about: "loam-based, for young plants",
    recipe: "loam 7, peat 3, sand 2 + loam base feed 3.11 kg/m3 + chalk 0.556 kg/m3",
    source: "rhs-loam-composts",
  },
  {
    id: "loam-2",
    about: "loam-based, for vegetables in containers",
    recipe: "loam 7, peat 3, sand 2 + loam base feed 6.22 kg/m3 + chalk 1.11 kg/m3",
    source: "rhs-loam-composts",
  },
  {
    id: "bark-peat-sand",
    about: "nursery mix for long-standing pots",
    recipe: "bark 3, peat 1, sand 1",
    source: "container-mix-guidance",
  },
  {
    id: "raised-bed",
    about: "one part compost to two of topsoil",
    recipe: "compost 1, topsoil 2",
    source: "umd-raised-beds",
  },
];
