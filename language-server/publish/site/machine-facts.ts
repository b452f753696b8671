/** A machine's sheet from its model: each clause of the file in a few words, with titles in the place of names. */
import type { Clause, Ref } from '../../../grammar/syntax/tree.ts';
import { readTyped, said } from '../../model/fastening-amounts.ts';
import { list, type Model, type Thing } from '../../model/model.ts';
import type { MachineSheet } from './machine-sheet.ts';

/** `kinds` are the headings, in the order in which they stand on the page. */
export function machineSheet(model: Model, kinds: Readonly<Record<string, string>>): MachineSheet {
  const groups = Object.entries(kinds).map(([kind, title]) => ({
    kind,
    title,
    entries: model.things
      .filter((thing) => thing.type === kind)
      .map((thing) => ({
        id: thing.name,
        name: thing.title,
        ...(thing.count === undefined ? {} : { count: thing.count }),
        facts: factsOf(thing, model),
      })),
  }));
  return {
    name: model.name,
    title: model.title,
    variants: [...model.variants].map(([name, { values }]) => ({ name, values: [...values] })),
    groups: groups.filter(({ entries }) => entries.length > 0),
  };
}

function factsOf(thing: Thing, model: Model): string[] {
  return thing.declaration.clauses.flatMap((clause) => {
    const text = factOf(clause, model);
    return text === undefined || text === '' ? [] : [text];
  });
}

function factOf(clause: Clause, model: Model): string | undefined {
  const titles = (refs: readonly Ref[]) => list(refs.map((ref) => titleOf(ref, model)));
  switch (clause.clause) {
    case 'held by':
      return `held by ${titles(clause.refs)}${clause.each === undefined ? '' : `, ${clause.each} each`}`;
    case 'clamps':
    case 'joins':
      return `${clause.clause} ${titles(clause.refs)}${clause.to.length > 0 ? ` to ${titles(clause.to)}` : ''}`;
    case 'count':
    case 'like':
    case 'item':
      return undefined;
    case 'positions':
      return `positions ${clause.names.map((name) => name.text).join(', ')}`;
    case 'goes':
    case 'part number':
    case 'stored':
      return clause.text && `${clause.clause} ${clause.text.value}`;
    case 'also called':
      return `also called ${clause.texts.map((text) => text.value).join(', ')}`;
    case 'hazard': {
      const harm = clause.harm ? ` ${clause.harm.text}` : '';
      return `hazard: ${clause.hazards.map((hazard) => hazard.text).join(', ')}${harm}`;
    }
    case 'holds': {
      const amount = readTyped(clause.quantity, model.values);
      const fluid = clause.fluid ? titleOf(clause.fluid, model) : '';
      return amount && `holds ${said(amount)} ${fluid}`.trim();
    }
    case 'thread':
    case 'class':
    case 'grade':
      return clause.designation && `${clause.clause} ${clause.designation.text}`;
    case 'normally':
      return clause.state && `normally ${clause.state.text}`;
    case 'only':
    case 'layout':
    case 'order':
    case 'plan':
      // A drawing or the steps say these.
      return undefined;
    default:
      if ('refs' in clause) return `${clause.clause} ${titles(clause.refs)}`;
      if ('quantity' in clause) {
        const amount = readTyped(clause.quantity, model.values);
        return amount && `${clause.clause} ${said(amount)}`;
      }
      return clause.clause;
  }
}

function titleOf({ name }: Ref, model: Model): string {
  return model.byName.get(name.text)?.title ?? name.text.replaceAll('-', ' ');
}
