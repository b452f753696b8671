/** What a procedure says that it needs, made less: tools, supplies, time, people. */
import type { Procedure, Ref } from '../../grammar/syntax/tree.ts';
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
        if (header.refs.length > 1)
          for (const ref of header.refs)
            add('supply left out', ref.name.text, withoutRef(source, header.refs, ref));
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
