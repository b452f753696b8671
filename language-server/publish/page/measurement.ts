/** A measurement or inspection: a small table of readings, what each means and what to do then, steps and all. */
import type { FlowItem, Measurement, OutcomeRow, Step } from '../document/types.ts';
import { anchor, type Context } from './context.ts';
import { Html, html, type Piece } from './html.ts';

export function measurement(
  one: Measurement,
  step: Step,
  context: Context,
  inner: (items: FlowItem[]) => Html,
): Html {
  const { words } = context;
  const id = anchor(step.id);
  const rows = one.rows.map(
    (row) =>
      html`<tr class="${row.meaning.replace(' ', '-')}"${bounds(row)} id="${anchor(row.id)}"><th scope="row">${row.reading}</th><td>${row.meaningText}</td>${whatToDo(row)}</tr>`,
  );
  const steps = one.rows.filter((row) => row.items.length > 0 && !onlyStops(row));
  return html`${
    one.rows.length > 0 &&
    html`<table class="outcomes"${one.record !== undefined && html` data-for="${one.record}"`}><caption>${one.what}</caption><thead><tr><th scope="col">${words.reading}</th><th scope="col">${words.means}</th><th scope="col">${words.whatToDo}</th></tr></thead><tbody>${rows}</tbody></table>`
  }${choosing(one, id, context)}${steps.map(
    (row) => html`<div class="way"><p class="way-label">${row.reading}:</p>${inner(row.items)}</div>`,
  )}`;
}

/** A row that only stops the job says so in the table; a second time below it would be one too many. */
function onlyStops({ items }: OutcomeRow): boolean {
  return items.length === 1 && items[0]!.kind === 'stop';
}

function whatToDo(row: OutcomeRow): Html {
  const [first] = row.items;
  return onlyStops(row) && first
    ? html`<td id="${anchor(first.id)}"><b>${row.action}</b></td>`
    : html`<td>${row.action}</td>`;
}

/** The ends of a row, for the script that shows in which row a reading falls. */
function bounds({ low, high }: OutcomeRow): Html {
  const end = (name: string, one: OutcomeRow['low']) =>
    one &&
    html` data-${new Html(name)}="${one.value}"${one.included && html` data-${new Html(name)}-in="1"`}`;
  return html`${end('low', low)}${end('high', high)}`;
}

function choosing({ table }: Measurement, id: string, { words }: Context): Piece {
  if (!table) return undefined;
  return html`<table class="outcomes"><caption id="${id}-table">${words.table(table.title)}</caption><thead><tr><th scope="col">${table.by || words.reading}</th><th scope="col">${words.gives}</th></tr></thead><tbody>${table.rows.map(
    ({ reading, gives }) => html`<tr><th scope="row">${reading}</th><td>${gives}</td></tr>`,
  )}</tbody></table>`;
}
