import { stringify } from "csv-stringify/sync";
import type { SeasonPlan } from "nutrient-core";

const COLUMNS = [
  "date",
  "until",
  "due_since",
  "planting",
  "kind",
  "what",
  "stage",
  "status",
  "provisional",
  "cans",
  "can_litres",
  "litres_per_plant",
  "product",
  "mass_grams",
  "grams_per_can",
  "millilitres_per_can",
  "cost",
  "n_ppm",
  "p_ppm",
  "p2o5_ppm",
  "k_ppm",
  "k2o_ppm",
  "id",
] as const;
type Row = Partial<Record<(typeof COLUMNS)[number], string | number | undefined>>;

/**
 * The season as a table: a row for each product of each feed, so that columns can be summed, and a row for each reminder.
 * Full precision, points as decimal signs; texts that a spreadsheet would take for a formula begin with an apostrophe.
 */
export function seasonCsv(plan: SeasonPlan): string {
  const rows = [...feedRows(plan), ...reminderRows(plan)].sort((a, b) => order(a) - order(b));
  return stringify(rows.map(harmless), {
    header: true,
    columns: [...COLUMNS],
    record_delimiter: "windows",
    // Without the mark, spreadsheets guess another encoding and spoil every umlaut.
    bom: true,
    escape_formulas: true,
  });
}

const order = ({ date }: Row): number => Date.parse(String(date));

function feedRows({ events }: SeasonPlan): Row[] {
  return events.flatMap((event) => {
    const { N, P, P2O5, K, K2O } = event.deliveredPpm;
    const row: Row = {
      date: event.date,
      until: event.date,
      due_since: event.dueSince,
      planting: event.planting,
      kind: "feed",
      what: event.stageName,
      stage: event.stage,
      status: event.status,
      provisional: event.provisional ? "yes" : "no",
      cans: event.cans,
      can_litres: event.canLitres,
      litres_per_plant: event.litresPerPlant,
      n_ppm: N,
      p_ppm: P,
      p2o5_ppm: P2O5,
      k_ppm: K,
      k2o_ppm: K2O,
      id: event.id,
    };
    if (event.amounts.length === 0) return [row];
    return event.amounts.map((amount) => ({
      ...row,
      product: amount.product,
      mass_grams: amount.massGrams,
      grams_per_can: amount.perCanGrams,
      millilitres_per_can: amount.perCanMillilitres,
      cost: amount.cost,
    }));
  });
}

function reminderRows({ reminders }: SeasonPlan): Row[] {
  return reminders.map(({ id, from, to, planting, kind, text }) => ({
    date: from,
    until: to,
    planting,
    kind,
    what: text,
    id,
  }));
}

/**
 * A spreadsheet that parts columns at another sign than the comma (many do, by country) would begin a cell inside a text:
 * what looks like a formula after such a sign is made harmless too.
 */
function harmless(row: Row): Row {
  return Object.fromEntries(
    Object.entries(row).map(([column, value]) => [
      column,
      typeof value === "string"
        ? value.replace(/([;,\t|"'\r\n]\s*)(?=[=+\-@\uff1d\uff0b\uff0d\uff20])/g, "$1'")
        : value,
    ]),
  );
}
