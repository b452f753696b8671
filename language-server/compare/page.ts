/** A comparison as one page that stands alone: for the person who releases a revision and keeps the record of it. */
import { DEFERENCE } from '../report/deference.ts';
import { type Change, type ChangeKind, type Comparison, percentWords } from './change.ts';
import { type Both, headWords, place, summary } from './text.ts';

export interface PageInput {
  /** What was compared, as named by whoever asked. */
  old: string;
  now: string;
  lines: Both;
}

const KINDS: Readonly<Record<ChangeKind, string>> = {
  added: 'New',
  removed: 'Gone',
  moved: 'Moved',
  changed: 'Changed',
  weakened: 'Weakened',
  strengthened: 'Strengthened',
  reworded: 'Reworded',
  record: 'Record',
};

export function comparisonPage(comparison: Comparison, { old, now, lines }: PageInput): string {
  const title = `From ${old} to ${now}`;
  const sections = comparison.sections.map((section) => {
    const sorted = [...section.changes].sort((a, b) => Number(b.meaning) - Number(a.meaning));
    const rows = sorted.map((change) => row(change, lines)).join('\n');
    return `<section>
<h2>${escaped(headWords(section))}</h2>
<table>
<thead><tr><th scope="col">Kind</th><th scope="col">What</th><th scope="col">Before</th><th scope="col">After</th><th scope="col">Where</th></tr></thead>
<tbody>
${rows}
</tbody>
</table>
</section>`;
  });
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escaped(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<main>
<h1>${escaped(title)}</h1>
<p>${escaped(comparison.sections.length === 0 ? 'Nothing has changed in meaning or wording.' : summary(comparison))}</p>
${sections.join('\n')}
<p>This list says what differs, not whether the change is right. ${escaped(DEFERENCE)}</p>
</main>
</body>
</html>
`;
}

function row(change: Change, lines: Both): string {
  const at = change.new ? place(change.new, lines.now) : change.old ? place(change.old, lines.old) : '';
  const percent = change.percent === undefined ? '' : ` <strong>${percentWords(change.percent)}</strong>`;
  const cells = [
    `<th scope="row">${KINDS[change.kind]}</th>`,
    `<td>${escaped(change.message)}</td>`,
    `<td>${code(change.before)}</td>`,
    `<td>${code(change.after)}${percent}</td>`,
    `<td>${escaped(at)}</td>`,
  ];
  return `<tr class="${change.meaning ? 'meaning' : 'words'}">${cells.join('')}</tr>`;
}

function code(text: string | undefined): string {
  return text === undefined ? '' : `<code>${escaped(text)}</code>`;
}

function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

const STYLE = `
:root { color-scheme: light dark; font: 1rem/1.5 system-ui, sans-serif; }
body { margin: 0; }
main { max-width: 70rem; margin: 0 auto; padding: 1rem; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: 0.3rem 0.6rem 0.3rem 0; border-bottom: 1px solid; overflow-wrap: anywhere; }
.words { opacity: 0.85; }
.words th { font-weight: normal; }
code { font-size: 0.9em; white-space: pre-wrap; }
@media (max-width: 45rem) {
  thead { position: absolute; clip-path: inset(50%); }
  tr, td, tbody th { display: block; border: 0; padding: 0; }
  tr { border-bottom: 1px solid; padding: 0.5rem 0; }
}
`;
