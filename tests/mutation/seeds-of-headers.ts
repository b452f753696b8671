/** What a procedure says that it needs, made less: tools, supplies, time, people. */
import type { Procedure, Ref, Span } from '../../grammar/syntax/tree.ts';
import { actionsIn, type Items, lineAt, replaced, saidAt } from './seed-items.ts';
import type { Seed, SeedKind } from './seeds.ts';

export function headerSeeds(source: string, procedure: Procedure, items: Items): Seed[] {
  const found: Seed[] = [];
  for (const header of procedure.headers) {
    const add = (kind: SeedKind, what: string, text: string) =>
      found.push({ kind, line: lineAt(source, header.start), what, text });
    switch (header.header) {
      case 'tools': {
        if (header.refs.length > 1)
          for (const ref of header.refs)
            add('tool left out of the list', ref.name.text, withoutRef(source, header.refs, ref));
        const other = [...items.values()].find(
          (one) => one.type === 'tool' && isIdle(one.name?.text, procedure),
        );
        if (other?.name)
          add(
            'tool listed that nothing uses',
            other.name.text,
            replaced(source, { start: header.end, end: header.end }, `, ${other.name.text}`),
          );
        break;
      }
      case 'supplies':
        for (const one of [...header.refs, ...header.fluids.map(spanOf)]) {
          const text = header.refs.length + header.fluids.length > 1 && withoutPiece(source, one);
          if (text) add('supply left out', saidAt(source, one), text);
        }
        break;
      case 'time':
        if (header.quantity)
          add(
            'time of the job cut to 1 min',
            saidAt(source, header),
            replaced(source, header.quantity, '1 min'),
          );
        break;
      case 'people':
        if ((header.count ?? 0) > 1)
          add('people cut to one', saidAt(source, header), replaced(source, header, 'people 1'));
        break;
      default:
        break;
    }
  }
  return found;
}

function spanOf({ quantity, fluid }: { quantity: Span; fluid?: Span }): Span {
  return { start: quantity.start, end: (fluid ?? quantity).end };
}

/** The list without one of its pieces, and without the comma before or behind it. */
function withoutPiece(source: string, { start, end }: Span): string | undefined {
  const behind = /^\s*,\s*/.exec(source.slice(end));
  if (behind) return replaced(source, { start, end: end + behind[0].length }, '');
  const before = /,\s*$/.exec(source.slice(0, start));
  return before ? replaced(source, { start: start - before[0].length, end }, '') : undefined;
}

/** The list without one of its names, and without the comma that parts it. */
function withoutRef(source: string, refs: readonly Ref[], ref: Ref): string {
  const index = refs.indexOf(ref);
  const next = refs[index + 1];
  const before = refs[index - 1];
  return next
    ? replaced(source, { start: ref.start, end: next.start }, '')
    : replaced(source, { start: before!.end, end: ref.end }, '');
}

/** No step names it, and the header does not list it. */
function isIdle(name: string | undefined, procedure: Procedure): boolean {
  if (name === undefined) return false;
  const listed = procedure.headers.some(
    (header) => header.header === 'tools' && header.refs.some((ref) => ref.name.text === name),
  );
  const used = actionsIn(procedure.body!).some((action) =>
    [...action.objects, ...action.tails.flatMap((tail) => ('refs' in tail ? tail.refs : []))].some(
      (ref) => ref.name.text === name,
    ),
  );
  return !listed && !used;
}
