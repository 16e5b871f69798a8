/** The sheet's look: black on white, large, in patterns rather than colours; a page's width decides, A4 or Letter. */
export const SHEET_STYLE: string = `
@page { margin: 12mm; }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0 auto; padding: 4mm; max-width: 200mm; color: #000; background: #fff;
  font: 13pt/1.3 system-ui, "DejaVu Sans", "Liberation Sans", Arial, sans-serif; overflow-wrap: break-word; }
h1 { font-size: 24pt; line-height: 1.1; margin: 0; }
h2 { font-size: 16pt; margin: 5mm 0 2mm; border-bottom: 2pt solid #000; break-after: avoid; }
h3 { font-size: 13pt; margin: 0 0 1mm; break-after: avoid; }
.legend { break-after: avoid; }
p { margin: 0 0 1mm; }
.as-of { font-size: 13pt; margin: 1mm 0 3mm; }
.now { border: 3pt solid #000; border-radius: 3mm; padding: 3mm 4mm; break-inside: avoid; }
.now dl { margin: 0; display: grid; grid-template-columns: 47mm 1fr; gap: 1.5mm 3mm; }
.now dt { font-weight: 700; font-size: 15pt; }
.now dt { grid-column: 1; }
.now dd { grid-column: 2; margin: 0; font-size: 15pt; line-height: 1.2; }
.now dl.today { border-bottom: 1pt solid #000; padding-bottom: 2mm; margin-bottom: 2mm; }
.cards { display: flex; flex-wrap: wrap; gap: 3mm; }
.card { flex: 1 1 75mm; border: 1.5pt solid #000; border-radius: 3mm; padding: 1.5mm 2.5mm; break-inside: avoid;
  display: grid; grid-template-columns: auto 1fr; gap: 0 4mm; }
.letter { font-size: 30pt; line-height: 1; font-weight: 800; border: 2.5pt solid #000; border-radius: 50%; min-width: 15mm;
  height: 15mm; display: grid; place-items: center; }
.doses { list-style: none; margin: 0; padding: 0; }
.doses li { font-size: 16pt; line-height: 1.15; font-weight: 700; }
.doses .spoons { font-weight: 400; font-size: 14pt; white-space: nowrap; }
.together { white-space: nowrap; }
.small { font-size: 11pt; line-height: 1.2; }
table { border-collapse: collapse; width: 100%; }
th { text-align: left; font-size: 11pt; border-bottom: 1.5pt solid #000; padding: 1mm 2mm 1mm 0; }
td { border-bottom: 0.75pt solid #555; padding: 1.6mm 2mm 1.6mm 0; vertical-align: top; }
tr, .keep, tbody { break-inside: avoid; }
thead { display: table-header-group; }
.number { text-align: right; white-space: nowrap; }
.day { font-weight: 700; white-space: nowrap; }
.given td { color: #333; font-size: 11.5pt; padding-block: 0.8mm; }
.month th { font-size: 13pt; padding-top: 3mm; border-bottom: 0.75pt solid #000; break-after: avoid; }
.box { display: inline-block; width: 6mm; height: 6mm; border: 1.5pt solid #000; border-radius: 1mm; vertical-align: -1mm;
  text-align: center; line-height: 5mm; font-size: 12pt; }
.feed-letter { font-weight: 800; font-size: 17pt; line-height: 1; }
.cautions { list-style: none; margin: 0; padding: 0; }
.cautions li { margin: 0 0 2mm; padding-left: 3mm; border-left: 1.5pt solid #000; break-inside: avoid; }
.cautions .note { font-size: 11pt; line-height: 1.25; }
.cautions .danger { border: 3pt solid #000; padding: 2mm 3mm; }
.plots { display: flex; flex-wrap: wrap; gap: 4mm; }
figure { margin: 0 0 3mm; break-inside: avoid; }
.plots figure { flex: 1 1 56mm; max-width: 95mm; }
figcaption { font-size: 11pt; }
svg { display: block; width: 100%; height: auto; }
svg text { font-family: inherit; fill: #000; }
.notes { font-size: 11pt; }
@media (max-width: 480px) { .now dl { grid-template-columns: 1fr; } .now dd { grid-column: 1; } .table { overflow-x: auto; } }
@media print { body { padding: 0; max-width: none; } .sheet-break { break-before: page; } }
`;
