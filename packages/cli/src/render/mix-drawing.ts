import { wrapAnsi } from "fast-wrap-ansi";
import type { Fill, MixResult, Section, SectionPoint, UnitHabit } from "nutrient-core";
import { length, shown, volume } from "./number.ts";
import { html, type Markup } from "./sheet/markup.ts";

const WIDTH = 760;
const MARGIN = 24;
/** The tallest section is drawn no higher than this. */
const TALLEST = 260;
const LINE = 18;
/** Beside a section, for its measures. */
const BESIDE = 70;
/** So many letters of 13 px stand in half of the sheet. */
const LETTERS = 44;

/** The ingredients' own colours where they have one, told apart by lightness too, for grey print. */
const OWN_COLOURS: readonly (readonly [RegExp, string])[] = [
  [/perlite|pumice/, "#f4f1e8"],
  [/vermiculite|sand|grit/, "#d9bd7a"],
  [/coir|coco/, "#b07a4f"],
  [/bark|wood/, "#8c5a3c"],
  [/peat/, "#5f4a3a"],
  [/soil|loam/, "#8a7f70"],
  [/compost|manure/, "#3f2f25"],
];
const OTHER_COLOURS = ["#7f8f5a", "#8a8f98", "#2f4a3c", "#c9c4bd"] as const;

/** A fill that can be drawn. */
type Drawn = Fill & { readonly section: Section };

/**
 * The beds and pots cut across, all to one scale, and under them the mix as labelled parts, as one SVG.
 *
 * Pots of which only the litres are known cannot be drawn and are named in the list only.
 */
export function mixDrawing(fills: readonly Fill[], result: MixResult, habit: UnitHabit): string {
  const drawn = fills.filter((fill): fill is Drawn => fill.section !== undefined);
  const rows = rowsOf(drawn);
  const parts: Markup[] = [];
  let top = MARGIN + LINE;
  parts.push(label(MARGIN, top, "Cut across, all to one scale", "bold"));
  top += LINE;
  const scale = scaleOf(drawn, rows);
  for (const row of rows) {
    const height = Math.max(...row.map(({ section }) => heightOf(section))) * scale;
    const ground = top + LINE + height;
    const cell = (WIDTH - 2 * MARGIN) / row.length;
    const words = row.map((fill) =>
      wrapAnsi(`${fill.count} x ${fill.written}`, LETTERS * (2 / row.length)).split("\n"),
    );
    parts.push(
      ...row.map((fill, index) =>
        sectionMarkup(fill, words[index]!, MARGIN + cell * (index + 0.5), ground, scale, habit),
      ),
    );
    top = ground + (3 + Math.max(...words.map((lines) => lines.length))) * LINE;
  }
  if (drawn.length > 0) {
    parts.push(scaleBar(MARGIN, top, scale, habit));
    top += 2 * LINE;
  }
  parts.push(label(MARGIN, top, "The mix, parts of loose volume", "bold"));
  parts.push(...proportions(result, top + 10, habit));
  const bottom = top + 10 + 44 + LINE * (result.components.length + 1) + MARGIN;
  const title = `Mix for ${fills.map(({ count, written }) => `${count} x ${written}`).join("; ")}`;
  return `${
    html`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${round(bottom)}" width="${WIDTH}" height="${round(bottom)}" role="img" font-family="system-ui, sans-serif" font-size="13" fill="#222">
<title>${title}</title>
<rect width="${WIDTH}" height="${round(bottom)}" fill="#fff"/>
${parts.map((part) => html`${part}\n`)}</svg>`.markup
  }\n`;
}

/** Two sections side by side. */
function rowsOf(drawn: readonly Drawn[]): readonly (readonly Drawn[])[] {
  const rows: Drawn[][] = [];
  for (const fill of drawn) {
    const last = rows.at(-1);
    if (last && last.length < 2) last.push(fill);
    else rows.push([fill]);
  }
  return rows;
}

/** Pixels for a metre, so that the widest and the tallest section find room. */
function scaleOf(drawn: readonly Drawn[], rows: readonly (readonly Drawn[])[]): number {
  if (drawn.length === 0) return 1;
  const tallest = Math.max(...drawn.map(({ section }) => heightOf(section)));
  const fitting = rows.flatMap((row) =>
    row.map(({ section }) => ((WIDTH - 2 * MARGIN) / row.length - 2 * BESIDE) / widthOf(section)),
  );
  return Math.min(TALLEST / tallest, ...fitting);
}

const across = (points: readonly SectionPoint[]): number => Math.max(0, ...points.map(([x]) => 2 * Math.abs(x)));
const widthOf = ({ mix, container }: Section): number => Math.max(across(mix), across(container));
const heightOf = (section: Section): number => Math.max(section.crestMetres, rimOf(section));
const rimOf = ({ container }: Section): number => Math.max(0, ...container.map(([, up]) => up));

function sectionMarkup(
  { section, volume: each }: Drawn,
  words: readonly string[],
  middle: number,
  ground: number,
  scale: number,
  habit: UnitHabit,
): Markup {
  const at = ([x, up]: SectionPoint): SectionPoint => [middle + x * scale, ground - up * scale];
  const path = (points: readonly SectionPoint[], close: boolean): string =>
    `M${points.map((point) => at(point).map(round).join(",")).join("L")}${close ? "Z" : ""}`;
  const { mix, container, layer, levelMetres, crestMetres } = section;
  const half = (widthOf(section) / 2) * scale;
  const moundMetres = crestMetres - levelMetres;
  const rim = rimOf(section);
  const height = rim > 0 ? rim : crestMetres;
  return html`<g>
<path d="${path(mix, true)}" fill="#b9966f" stroke="#6b4f36"/>
${layer.length > 0 && html`<path d="${path(layer, true)}" fill="#d5d2cc" stroke="#8a8680" stroke-dasharray="3 2"/>`}
${moundMetres > 0 && rim > 0 && html`<line x1="${round(middle - half)}" x2="${round(middle + half)}" y1="${round(ground - levelMetres * scale)}" y2="${round(ground - levelMetres * scale)}" stroke="#6b4f36" stroke-dasharray="5 4"/>`}
${container.length > 0 && html`<path d="${path(container, false)}" fill="none" stroke="#333" stroke-width="3" stroke-linejoin="round"/>`}
<line x1="${round(middle - half - 20)}" x2="${round(middle + half + 20)}" y1="${round(ground + 2)}" y2="${round(ground + 2)}" stroke="#999"/>
<line x1="${round(middle - half - 10)}" x2="${round(middle - half - 10)}" y1="${round(ground)}" y2="${round(ground - height * scale)}" stroke="#555"/>
${label(middle - half - 14, ground - (height * scale) / 2 + 4, length(height, habit), "plain", "end")}
${moundMetres > 0 && rim > 0 && label(middle + half + 10, ground - (levelMetres + moundMetres / 2) * scale, `+${length(moundMetres, habit)}`)}
${label(middle, ground + LINE, `${length(widthOf(section), habit)} across`, "plain", "middle")}
${words.map((line, index) => label(middle, ground + (2 + index) * LINE, line, "bold", "middle"))}
${label(middle, ground + (2 + words.length) * LINE, `${volume(each.value, habit)} each`, "plain", "middle")}
</g>`;
}

function scaleBar(left: number, top: number, scale: number, habit: UnitHabit): Markup {
  const bar = habit === "us" ? 0.3048 : 0.5;
  const right = round(left + bar * scale);
  return html`<path d="M${left},${round(top - 4)}v8M${left},${round(top)}H${right}M${right},${round(top - 4)}v8" stroke="#222" fill="none"/>${label(right + 8, top + 4, habit === "us" ? "1 ft" : "50 cm")}`;
}

function proportions({ components, orderVolumeLitres }: MixResult, top: number, habit: UnitHabit): Markup[] {
  const room = WIDTH - 2 * MARGIN;
  const parts: Markup[] = [];
  let left = MARGIN;
  for (const [index, { name, share, looseVolumeLitres, isOwn }] of components.entries()) {
    const colour =
      OWN_COLOURS.find(([pattern]) => pattern.test(name))?.[1] ?? OTHER_COLOURS[index % OTHER_COLOURS.length]!;
    const width = share * room;
    parts.push(
      html`<rect x="${round(left)}" y="${round(top)}" width="${round(width)}" height="30" fill="${colour}" stroke="#333"/>`,
    );
    const line = top + 34 + LINE * (index + 1);
    const text = `${name}: ${shown(100 * share)} %, ${volume(looseVolumeLitres, habit)} loose${isOwn ? ", at hand" : ""}`;
    parts.push(
      html`<rect x="${MARGIN}" y="${round(line - 11)}" width="12" height="12" fill="${colour}" stroke="#333"/>${label(MARGIN + 20, line, text)}`,
    );
    left += width;
  }
  parts.push(
    label(MARGIN + 20, top + 34 + LINE * (components.length + 1), `together ${volume(orderVolumeLitres, habit)} loose`),
  );
  return parts;
}

function label(x: number, y: number, text: string, weight: "plain" | "bold" = "plain", anchor = "start"): Markup {
  return html`<text x="${round(x)}" y="${round(y)}" text-anchor="${anchor}"${weight === "bold" && html` font-weight="600"`}>${text}</text>`;
}

/** A hundredth of a pixel is enough. */
const round = (value: number): number => Math.round(value * 100) / 100;
