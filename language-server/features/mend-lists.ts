/**
 * Changes for notices that stand in the wrong place, and for the lists of tools and supplies.
 */
import type { Changes, Context } from './mend-context.ts';
import { moved } from './mend-edits.ts';
import { move } from './mend-moves.ts';
import { after, before } from './mend-outline.ts';

/** The notice stands elsewhere. */
export function* cautionMissing(context: Context): Changes {
  const { outline, spot, text } = context;
  const notices = outline.spots
    .filter(({ statement }) => statement.kind === 'notice')
    .sort((a, b) => Math.abs(a.order - spot.order) - Math.abs(b.order - spot.order))
    .slice(0, 4);
  for (const notice of notices) {
    yield* move(context, spot, after(notice));
    const edits = moved(text, notice, before(spot));
    if (edits) yield edits;
  }
}

export function* cautionLate(context: Context): Changes {
  for (const other of context.related) {
    const edits = moved(context.text, context.spot, before(other));
    if (edits) yield edits;
    yield* move(context, other, after(context.spot));
  }
}

export function* toolUnlisted({ subject, outline }: Context): Changes {
  for (const header of outline.procedure.headers) {
    const last = header.header === 'tools' ? header.refs[header.refs.length - 1] : undefined;
    if (subject && last) yield [{ start: last.end, end: last.end, text: `, ${subject.thing.name}` }];
  }
}

export function* supplyShort({ subject, about, outline, text }: Context): Changes {
  const needed = Number(about.words?.needed);
  if (!subject || about.words?.amount || !Number.isInteger(needed)) return;
  const { name } = subject.thing;
  const entry = needed > 1 ? `${name} x${needed}` : name;
  for (const header of outline.procedure.headers) {
    if (header.header !== 'supplies') continue;
    const own = header.refs.find((ref) => ref.name.text === name);
    const last = header.refs[header.refs.length - 1];
    if (own) yield [{ start: own.start, end: own.end, text: entry }];
    else if (last) yield [{ start: last.end, end: last.end, text: `, ${entry}` }];
    else if (header.fluids.length > 0) {
      const start = header.fluids[0]!.quantity.start;
      yield [{ start, end: start, text: `${entry}, ` }];
    }
  }
  if (outline.procedure.headers.some(({ header }) => header === 'supplies')) return;
  const lastHeader = outline.procedure.headers.at(-1);
  if (lastHeader)
    yield [{ start: lastHeader.end, end: lastHeader.end, text: `${gap(text, lastHeader)}supplies ${entry}` }];
}

/** Headers stand on one line, or each on its own. */
function gap(text: string, header: { start: number }): string {
  const line = text.slice(text.lastIndexOf('\n', header.start) + 1, header.start);
  return line.trim() === '' ? `\n${line}` : '  ';
}
