/** Fields to write into: values, words, signatures, the word of a second person. On paper they are lines. */
import type { RecordField } from '../document/types.ts';
import { anchor, type Context } from './context.ts';
import { type Html, html } from './html.ts';
import { classes } from './rich.ts';

export function recordField(record: RecordField, context: Context): Html {
  const { conditions } = context;
  const { kind, unit } = record;
  const id = `${anchor(record.id)}-entry`;
  const input =
    kind === 'value'
      ? html`<input type="text" inputmode="decimal" autocomplete="off" id="${id}" data-record="${record.id}">`
      : html`<input type="text" autocomplete="off" id="${id}" data-record="${record.id}">`;
  return html`<p${classes('record', kind, conditions.classOf(record.when))}><label for="${id}">${record.label}</label> ${input}${unit !== undefined && html` <span class="unit">${unit}</span>`}</p>`;
}
