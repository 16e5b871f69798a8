import type { Caution, ProgrammeNote, Reminder, SeasonPlan, UnitHabit } from "nutrient-core";
import { mass, money } from "../number.ts";
import { remindersTogether } from "../season-agenda.ts";
import { spanText } from "../season-day.ts";
import { massOrNone } from "../season-feed.ts";
import { packsText } from "../season-packs.ts";
import { html, type Markup } from "./markup.ts";

/** Jobs beside the feeds, with the days for them. */
export function reminderTable(reminders: readonly Reminder[]): Markup {
  return html`<div class="table"><table><thead><tr><th scope="col">Done</th><th scope="col">Days</th><th scope="col">Where</th><th scope="col">What</th></tr></thead><tbody>
${remindersTogether(reminders).map(
  ({ from, to, plantings, text }) =>
    html`<tr><td><span class="box" role="img" aria-label="to do"></span></td><td class="day">${spanText(from, to)}</td><td>${plantings.join(", ")}</td><td>${text}</td></tr>`,
)}</tbody></table></div>`;
}

/** What to buy for the whole season, and what is left over of it. */
export function orderTable(
  { shopping, shoppingCost }: SeasonPlan,
  currency: string | undefined,
  habit: UnitHabit,
): Markup {
  return html`<div class="table keep"><table><thead><tr><th scope="col">Bought</th><th scope="col">What</th><th scope="col" class="number">Needed</th><th scope="col" class="number">On the shelf</th><th scope="col" class="number">Left over</th><th scope="col" class="number">Cost</th></tr></thead><tbody>
${shopping.map(
  (line) =>
    html`<tr><td>${line.packs.length > 0 || line.missingGrams > 0 ? html`<span class="box" role="img" aria-label="to buy"></span>` : "no need"}</td><td><strong>${whatToBuy(line, habit)}</strong></td><td class="number">${massOrNone(line.neededGrams, habit)}</td><td class="number">${massOrNone(line.stockGrams, habit)}</td><td class="number">${massOrNone(line.leftoverGrams, habit)}</td><td class="number">${line.cost === undefined ? "" : money(line.cost, currency)}</td></tr>`,
)}</tbody>${
    shoppingCost === undefined
      ? undefined
      : html`<tfoot><tr><th scope="row" colspan="5">All together</th><td class="number"><strong>${money(shoppingCost, currency)}</strong></td></tr></tfoot>`
  }</table></div>`;
}

function whatToBuy(line: SeasonPlan["shopping"][number], habit: UnitHabit): string {
  if (line.packs.length > 0) return packsText(line, habit);
  return line.missingGrams > 0 ? `${mass(line.missingGrams, habit)} ${line.name}` : line.name;
}

const MARK = { danger: "DANGER: ", caution: "Take care: ", note: "" } as const;

/** Cautions, the most urgent framed. */
export function cautionList(cautions: readonly Caution[]): Markup {
  return html`<ul class="cautions">${cautions.map(
    ({ severity, message }) =>
      html`<li class="${severity}">${severity === "note" ? undefined : html`<strong>${MARK[severity]}</strong>`}${message}</li>`,
  )}</ul>`;
}

const EVIDENCE = {
  "common-practice": "common practice, no source",
  trial: "from a published trial",
  "published-advice": "from published advice",
  own: "the grower's own",
} as const;

/** What each programme rests on, and where it is followed. */
export function programmeNotes(programmes: readonly ProgrammeNote[]): Markup {
  const ids = [...new Set(programmes.map(({ id }) => id))];
  return html`<div class="notes">${ids.map((id) => {
    const alike = programmes.filter((programme) => programme.id === id);
    const { name, evidence, notes } = alike[0]!;
    const plantings = alike.map(({ planting }) => planting).join(", ");
    return html`<p><strong>${plantings}: ${name}</strong> (${EVIDENCE[evidence]}). ${notes.join(" ")}</p>`;
  })}</div>`;
}
