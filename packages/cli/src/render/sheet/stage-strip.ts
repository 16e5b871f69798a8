import { scaleBand, scaleUtc } from "d3-scale";
import type { CivilDate, MilestoneDate, SeasonEvent, SeasonPlan, StageSpan } from "nutrient-core";
import { asInstant, dayText, spanText } from "../season-day.ts";
import { dateTicks } from "./date-ticks.ts";
import { html, type Markup } from "./markup.ts";
import { type StripRow, stripRows } from "./strip-rows.ts";

const WIDTH = 720;
const ROW = 68;
const TOP = 24;
/** Room beside the first and the last day, so that their marks are not cut. */
const EDGE = 7;

/** Stages are told apart by fill pattern and name, so that the strip survives a black and white printer. */
const FILLS = ["#fff", "url(#lines)", "url(#dots)", "url(#cross)"] as const;

/** So many rows fit on a page with what stands around them. */
const MOST_ROWS = 10;

/** The season as a strip: a row for plantings that are alike, its stages in time, its feeds, and the days the first flower is expected. */
export function stageStrip(plan: SeasonPlan): Markup | undefined {
  const { today } = plan;
  const all = stripRows(plan);
  const rows = all.slice(0, MOST_ROWS);
  const days = [
    ...rows.flatMap(({ stages }) => stages.flatMap(({ begins, ends }) => [begins, ends])),
    ...rows.flatMap(({ events }) => events.map(({ date }) => date)),
  ].sort();
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const bottom = TOP + ROW * rows.length;
  const x = scaleUtc([asInstant(first), asInstant(last)], [EDGE, WIDTH - EDGE]);
  const y = scaleBand(
    rows.map((_, index) => index),
    [TOP, bottom],
  ).paddingInner(0.1);
  const at = (date: CivilDate): number => x(asInstant(date));
  const height = bottom + 18;
  const stageIds = [...new Set(rows.flatMap(({ stages }) => stages.map(({ id }) => id)))];
  const fill = ({ id }: StageSpan): string => FILLS[stageIds.indexOf(id) % FILLS.length]!;
  return html`<figure><svg viewBox="0 0 ${WIDTH} ${height}" role="img" aria-labelledby="strip-title strip-desc">
<title id="strip-title">Stages and feeds of the season</title>
<desc id="strip-desc">${rows.map(inWords).join(" ")}</desc>
<defs>
<pattern id="lines" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V7" stroke="#777" stroke-width="1.4"/></pattern>
<pattern id="dots" width="9" height="9" patternUnits="userSpaceOnUse"><circle cx="3" cy="3" r="1.3" fill="#777"/></pattern>
<pattern id="cross" width="9" height="9" patternUnits="userSpaceOnUse"><path d="M0 0L9 9M9 0L0 9" stroke="#777" stroke-width="1"/></pattern>
</defs>
${dateTicks(x, 9).map(({ date, label }) => html`<path d="M${x(date)} ${TOP - 4}V${bottom}" stroke="#999" stroke-width="0.8"/><text x="${x(date) + 3}" y="14" font-size="14">${x(date) > WIDTH - 40 ? "" : label}</text>`)}
${rows.map(({ stages, events, flower }, index) => {
  const top = y(index)!;
  return html`${stages.map((stage) => stageBar(stage, at, top + 18, fill(stage)))}
${events.map((event) => feedMark(event, at(event.date), top + 55))}
${flower && flowerMark(flower, at, top + 18)}`;
})}
${today !== null && today >= first && today <= last ? todayMark(at(today), height) : undefined}
${rows.map(({ name }, index) => html`<text x="${EDGE}" y="${y(index)! + 9}" paint-order="stroke" stroke="#fff" stroke-width="4" stroke-linejoin="round" font-size="14" font-weight="700">${name}</text>`)}
</svg>
<figcaption>Each dot is a feed: filled when given, open when to come.${
    rows.some(({ flower }) => flower && isAwaited(flower))
      ? " The heavy bracket spans the days on which the first flower is expected."
      : ""
  }${all.length > rows.length ? ` Of ${all.length} different seasons the first ${rows.length} are drawn.` : ""}</figcaption></figure>`;
}

/** Letters this wide on average, of the font's size: enough to tell whether a name fits its bar. */
const LETTER_WIDTH = 0.57;
const BAR = 26;

/** A stage's bar; its name stands in it as large as fits, and cut short where nothing does. */
function stageBar(
  { begins, ends, name }: StageSpan,
  at: (date: CivilDate) => number,
  top: number,
  fill: string,
): Markup {
  const left = at(begins);
  const width = Math.max(2, at(ends) - left);
  const room = (size: number): number => Math.floor((width - 8) / (size * LETTER_WIDTH));
  const size = [15, 13, 11].find((candidate) => name.length <= room(candidate)) ?? 11;
  const label =
    name.length <= room(size) ? name : room(size) >= 6 ? `${name.slice(0, room(size) - 1).trimEnd()}\u2026` : "";
  const paper = Math.min(width - 6, label.length * size * LETTER_WIDTH + 6);
  return html`<rect x="${left}" y="${top}" width="${width}" height="${BAR}" fill="${fill}" stroke="#000" stroke-width="1.6"/>${
    label === ""
      ? undefined
      : html`<rect x="${left + 3}" y="${top + 4}" width="${paper}" height="${BAR - 8}" fill="#fff"/><text x="${left + 6}" y="${top + 18}" font-size="${size}">${label}</text>`
  }`;
}

function feedMark({ status }: SeasonEvent, x: number, y: number): Markup {
  const fill = status === "given" ? "#000" : "#fff";
  return html`<circle cx="${x}" cy="${y}" r="4.5" fill="${fill}" stroke="#000" stroke-width="1.6"/>`;
}

/** Whether there are days on which it may be seen. */
function isAwaited({ basis, earliest, latest }: MilestoneDate): boolean {
  return basis !== "observed" && basis !== "implied" && earliest !== latest;
}

function flowerMark(flower: MilestoneDate, at: (date: CivilDate) => number, top: number): Markup | undefined {
  if (!isAwaited(flower)) return undefined;
  const { earliest, latest } = flower;
  const [left, right] = [at(earliest), at(latest)];
  return html`<path d="M${left} ${top + 6}V${top - 5}H${right}V${top + 6}" fill="none" stroke="#000" stroke-width="3.5"/>`;
}

function todayMark(x: number, height: number): Markup {
  const anchor = x > WIDTH - 50 ? "end" : x < 50 ? "start" : "middle";
  return html`<path d="M${x} ${TOP - 4}V${height - 16}" stroke="#000" stroke-width="2" stroke-dasharray="2 3"/><text x="${x}" y="${height - 3}" font-size="13" font-weight="700" text-anchor="${anchor}">today</text>`;
}

function inWords({ name, stages, flower }: StripRow): string {
  const bars = stages.map((stage) => `${stage.name}, ${spanText(stage.begins, stage.ends)}.`);
  const seen =
    flower &&
    (flower.earliest === flower.latest
      ? dayText(flower.likely)
      : `expected ${spanText(flower.earliest, flower.latest)}`);
  return [`${name}:`, ...bars, ...(seen ? [`First flower ${seen}.`] : [])].join(" ");
}
