/**
 * The declarations of a machine gathered before they are wired up: those of the machines it extends, its own,
 * and the shared ones of the files it uses, each with the clauses that `like` brings. Own clauses win over
 * `like`, own declarations over those of the extended machine.
 */
import type {
  Clause,
  ClauseName,
  Coupled,
  Declaration,
  Machine,
  MachineItem,
  Name,
  Never,
  Rule,
  Table,
  Value,
  Variant,
} from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { duplicateName, findMachine, type LoadedFile, unknownName } from './names.ts';

export interface Drafted<Item> {
  item: Item;
  file: string;
}

export interface Draft {
  declarations: (Drafted<Declaration> & { clauses: Clause[] })[];
  couplings: Drafted<Coupled>[];
  values: Drafted<Value>[];
  tables: Drafted<Table>[];
  variants: Drafted<Variant>[];
  nevers: Drafted<Never>[];
  rules: Drafted<Rule>[];
}

export function draft(
  machine: Machine | undefined,
  file: LoadedFile,
  visible: readonly LoadedFile[],
  facts: Fact[],
): Draft {
  const items = gather(machine, file, visible, facts);
  const named = new Map<string, Drafted<Declaration>>();
  const result: Draft = {
    declarations: [],
    couplings: [],
    values: [],
    tables: [],
    variants: [],
    nevers: [],
    rules: [],
  };
  const seen = new Map<string, Drafted<{ name?: Name }>>();
  const declarations: Drafted<Declaration>[] = [];
  for (const { item, file: from, base } of items) {
    if (item.kind === 'broken') continue;
    if (item.kind === 'coupled') result.couplings.push({ item, file: from });
    else if (item.kind === 'never') result.nevers.push({ item, file: from });
    else {
      if (item.name && item.kind !== 'rule') {
        const earlier = seen.get(item.name.text);
        if (earlier?.item.name) {
          if (base) continue;
          const what = item.kind === 'declaration' ? item.type : item.kind;
          facts.push(duplicateName(from, item.name, what, { file: earlier.file, name: earlier.item.name }));
          continue;
        }
        seen.set(item.name.text, { item, file: from });
      }
      if (item.kind === 'declaration') {
        declarations.push({ item, file: from });
        if (item.name) named.set(item.name.text, { item, file: from });
      } else if (item.kind === 'value') result.values.push({ item, file: from });
      else if (item.kind === 'table') result.tables.push({ item, file: from });
      else if (item.kind === 'variant') result.variants.push({ item, file: from });
      else result.rules.push({ item, file: from });
    }
  }
  for (const drafted of declarations) {
    result.declarations.push({ ...drafted, clauses: withLike(drafted, named, facts, []) });
  }
  return result;
}

/** Own items first, so that they win; then the extended machines', then what the used files share. */
function gather(
  machine: Machine | undefined,
  file: LoadedFile,
  visible: readonly LoadedFile[],
  facts: Fact[],
): { item: MachineItem; file: string; base: boolean }[] {
  const items: { item: MachineItem; file: string; base: boolean }[] = [];
  const chain: Machine[] = [];
  let current = machine;
  let from = file;
  while (current) {
    chain.push(current);
    const base = chain.length > 1;
    for (const item of current.items) items.push({ item, file: from.path, base });
    const name: Name | undefined = current.extends;
    if (!name) break;
    const found = findMachine(visible, name.text);
    if (!found) {
      facts.push(
        unknownName(
          from.path,
          name,
          'machine',
          visible.flatMap((one) => one.machines.flatMap((m) => m.name?.text ?? [])),
        ),
      );
      break;
    }
    if (chain.includes(found.machine)) {
      facts.push({
        check: 'use-cycle',
        at: { file: from.path, start: name.start, end: name.end },
        words: { name: name.text, of: 'extends' },
      });
      break;
    }
    current = found.machine;
    from = found.file;
  }
  for (const one of visible) for (const item of one.shared) items.push({ item, file: one.path, base: false });
  return items;
}

/** A second clause of these adds to the first; of any other, the declaration's own replaces it. */
const ADDING: ReadonlySet<ClauseName> = new Set(['hazard', 'also called', 'with', 'only']);

function withLike(
  drafted: Drafted<Declaration>,
  named: ReadonlyMap<string, Drafted<Declaration>>,
  facts: Fact[],
  path: Declaration[],
): Clause[] {
  const own = drafted.item.clauses;
  const result = own.slice();
  for (const clause of own) {
    if (clause.clause !== 'like') continue;
    for (const ref of clause.refs) {
      const other = named.get(ref.name.text);
      if (!other) {
        if (path.length === 0)
          facts.push(unknownName(drafted.file, ref.name, drafted.item.type, named.keys()));
        continue;
      }
      if (other.item === drafted.item || path.includes(other.item)) {
        facts.push({
          check: 'use-cycle',
          at: { file: drafted.file, start: ref.start, end: ref.end },
          words: { name: ref.name.text, of: 'like' },
        });
        continue;
      }
      for (const theirs of withLike(other, named, facts, [...path, drafted.item])) {
        if (theirs.clause === 'like') continue;
        if (ADDING.has(theirs.clause) || !own.some((mine) => mine.clause === theirs.clause))
          result.push(theirs);
      }
    }
  }
  return result;
}
