import { term, type WorkingLine } from "../outcome/working.ts";

/**
 * The four volumes of one and the same material, kept apart by name.
 *
 * loose (as delivered, component by component) -> mixed (fines have filled the gaps between coarse grains)
 * -> settled (firmed and watered in) = the space that is filled.
 */
export interface MixVolumes {
  /** The space to fill: what the settled, mixed material takes. */
  readonly fillVolumeLitres: number;
  /** What the heap of freshly mixed material measures: fill / (1 - settling). */
  readonly mixedVolumeLitres: number;
  /** The components' loose volumes together: fill / ((1 - loss) (1 - settling)). */
  readonly orderVolumeLitres: number;
  /** Mixed less fill: what to heap up above the rim now, or to keep for topping up. */
  readonly topUpLitres: number;
}

/** Volume that goes on the way, as shares from 0 to less than 1. */
export interface VolumeLosses {
  /** Of the loose volume, on mixing. */
  readonly lossShare: number;
  /** Of the mixed volume, on firming, watering in and the first weeks. */
  readonly settlingShare: number;
}

/**
 * What has to be ordered so that the settled mix fills the space.
 *
 * @param fillVolumeLitres More than 0.
 * @example
 * mixVolumes(800, { lossShare: 0.2, settlingShare: 0 }).orderVolumeLitres  // => 1000
 */
export function mixVolumes(fillVolumeLitres: number, { lossShare, settlingShare }: VolumeLosses): MixVolumes {
  const mixedVolumeLitres = fillVolumeLitres / (1 - settlingShare);
  return {
    fillVolumeLitres,
    mixedVolumeLitres,
    orderVolumeLitres: mixedVolumeLitres / (1 - lossShare),
    topUpLitres: mixedVolumeLitres - fillVolumeLitres,
  };
}

/** The working of {@link mixVolumes}. */
export function volumesWorking(volumes: MixVolumes, losses: VolumeLosses, sources: LossSources): WorkingLine[] {
  const { fillVolumeLitres: fill, mixedVolumeLitres: mixed } = volumes;
  return [
    {
      label: "mixed volume, before it settles",
      expression: `${term(fill)} L / (1 - ${term(losses.settlingShare)})`,
      value: mixed,
      unit: "L",
      source: sources.settling,
    },
    {
      label: "loose material to have, before it is mixed",
      expression: `${term(mixed)} L / (1 - ${term(losses.lossShare)})`,
      value: volumes.orderVolumeLitres,
      unit: "L",
      source: sources.loss,
    },
    {
      label: "to heap up or to keep for topping up",
      expression: `${term(mixed)} L - ${term(fill)} L`,
      value: volumes.topUpLitres,
      unit: "L",
      source: null,
    },
  ];
}

/** Where the two shares come from; null when the grower gave them. */
export interface LossSources {
  readonly loss: string | null;
  readonly settling: string | null;
}
