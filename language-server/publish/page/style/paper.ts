/** On paper: black on white, boxes to tick, lines to write on, nothing cut in two. */
export const PAPER = `
@page { size: A4; margin: 18mm 15mm 16mm; font: 8pt system-ui, sans-serif; }
@media print {
  :root { --paper: #fff; --sheet: #fff; --ink: #000; --soft: #333; --line: #999; --strong-line: #333; --plate: #fff; --accent: #000; --accent-ground: #fff; --link: #000; --done: #000; --done-ground: #fff; --stop: #000; --stop-ground: #fff; --watch: #000; --watch-ground: #fff; }
  html, html.large { font-size: 9.5pt; color-scheme: light; }
  body, .working { display: block; }
  .sheet { max-width: none; padding: 0 .3mm 0 0; }
  #work, .skip, .home, .contents, .choose > p { display: none; }
  h1 { font-size: 18pt; }
  h2, h3, h4, h5, h6, .lead, .way-label, .under, .remark { break-after: avoid; }
  .panel, .note, .step, tr, figure, .glance li, .record, .plate { break-inside: avoid; }
  .panel { break-after: avoid; }
  .step { padding: 2mm 0; }
  .panel .signal, .word, .sign, .sign *, .signs * { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  .tick input { appearance: none; -webkit-appearance: none; width: 4.5mm; height: 4.5mm; border: .4mm solid #000; border-radius: 0; background: #fff; }
  .tick input:checked { background: linear-gradient(45deg, transparent 44%, #000 44% 56%, transparent 56%), linear-gradient(-45deg, transparent 44%, #000 44% 56%, transparent 56%); print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  .record input { border: 0; border-bottom: .3mm solid #000; border-radius: 0; min-height: 8mm; background: none; }
  .axis label:not(:has(:checked)) { border-style: dotted; }
  a { text-decoration: none; }
  .tally-says, .drawn details { display: none; }
  .drawn .dowel-chart { max-width: 100%; min-width: 0; }
  .drawn { border: 0; padding: 0; }
  .map-words::details-content { display: block; content-visibility: visible; block-size: auto; }
  .map-words summary { list-style: none; font-weight: 600; }
  .maps { columns: 2; }
  .maps .drawn { border: .2mm solid var(--line); padding: 2mm; }
}
@media (forced-colors: active) {
  .step.done .do::after { content: " ✓"; }
  .bench .count, .plate, .number { forced-color-adjust: auto; border: 1px solid; }
}
`;
