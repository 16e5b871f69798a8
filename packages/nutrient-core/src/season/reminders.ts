import { type CivilDate, dateOfDay, dayNumber } from "./civil-date.ts";
import { daysToEmergence } from "./crop.ts";
import type { MilestoneCalendar } from "./milestones.ts";
import type { Planting } from "./season.ts";
import type { Reminder } from "./season-plan.ts";

const COMMON = "common-practice";

/**
 * What to do beside feeding, in ranges of days. Nothing here is a must; what rests on no source says so.
 *
 * @param sowingCelsius Of the seed bed; without it, emergence is given for 20 to 30 °C.
 */
export function remindersFor(
  planting: Planting,
  calendar: MilestoneCalendar,
  sowingCelsius: number | undefined,
): Reminder[] {
  const reminders: Reminder[] = [];
  const add = (
    kind: Reminder["kind"],
    from: CivilDate,
    until: CivilDate,
    text: string,
    source: string,
    everyDays?: readonly [number, number],
  ): void => {
    // Nothing is done to plants that are cleared away.
    const to = until > planting.end ? planting.end : until;
    if (to < from) return;
    const id = `${planting.name}-${kind}`;
    reminders.push({ id, planting: planting.name, kind, from, to, text, source, ...(everyDays ? { everyDays } : {}) });
  };
  const later = (date: CivilDate, days: number): CivilDate => dateOfDay(dayNumber(date) + days);
  const { sown, setOut, end } = planting;
  if (sown !== undefined) {
    add("soak-seed", later(sown, -1), sown, "Soak the seed for 8 to 12 hours before sowing; this is optional.", COMMON);
    const emergence = emergenceDays(planting, sowingCelsius);
    if (emergence) {
      const [least, most] = emergence.days;
      const text = `Seedlings come up after ${days(least, most)} at ${emergence.celsius} °C of soil.`;
      add("germination", later(sown, Math.floor(least)), later(sown, Math.ceil(most)), text, emergence.source);
    }
  }
  add("set-out", setOut, setOut, "Set the plants out, into moist and warm soil.", COMMON);
  const flower = calendar.dateOf("first-flower");
  if (flower) {
    if (flower.basis !== "observed" && flower.basis !== "implied") {
      const text = "Look for the first open flower, and record it: what comes after moves with it.";
      add("look-for-first-flower", flower.earliest, flower.latest, text, COMMON);
    }
    const text =
      "Pinch the tip out when a plant is about 30 cm tall, if at all: practice pages say 15 to 30 cm, no trial was found, and the first fruit comes later for it.";
    // By the figures alone: a flower that lets itself be waited for does not keep the plants short.
    const likely = [flower.likely, flower.expected?.likely ?? flower.likely].sort()[0]!;
    add("pinch", setOut, likely, text, COMMON);
    const clear =
      "When the first flowers are open, clear the lowest two or three sets of leaves with clean blades, so that soil does not splash on them.";
    add("clear-lowest-leaves", flower.likely, later(flower.likely, 14), clear, COMMON);
  }
  const harvest = calendar.dateOf("first-harvest");
  if (harvest) {
    const text = "Pick every 3 to 7 days; fruit left to ripen slows the next ones.";
    add("pick", harvest.likely, end, text, COMMON, [3, 7]);
  }
  return reminders;
}

interface Emergence {
  readonly celsius: string;
  readonly days: readonly [number, number];
  readonly source: string;
}

function emergenceDays({ facts }: Planting, celsius: number | undefined): Emergence | undefined {
  if (!facts.emergence) return undefined;
  const { source } = facts.emergence;
  if (celsius !== undefined) {
    const found = daysToEmergence(facts, celsius);
    // The table was made in even warmth; a day either way is the least that a seed tray differs by.
    return found === undefined ? undefined : { celsius: String(celsius), days: [found - 1, found + 1], source };
  }
  const usual = [20, 25, 30].flatMap((temperature) => daysToEmergence(facts, temperature) ?? []);
  if (usual.length === 0) return undefined;
  return { celsius: "20 to 30", days: [Math.min(...usual), Math.max(...usual)], source };
}

function days(least: number, most: number): string {
  return `${Math.floor(least)} to ${Math.ceil(most)} days`;
}
