/** The layout of machines, their declarations, values, tables and rules. */
import type { Clause, Declaration, Machine, MachineItem, Plan, Rule, Table } from '../syntax/tree.ts';
import {
  block,
  continued,
  extentOf,
  fitsOneLine,
  head,
  type Layout,
  leaf,
  STEP,
  titled,
  WIDTH,
  wideBetween,
} from './layout.ts';
import { NONE } from './plan.ts';

export function layOutMachine(layout: Layout, machine: Machine, indent: number): void {
  const { first, last } = continued(layout, machine, indent);
  const brace = layout.source.openingBrace(first, last);
  head(layout, machine, machine.title, brace, indent);
  block(layout, brace, indent, {
    children: machine.items,
    each: (item, inner) => layOutMachineItem(layout, item, inner),
  });
}

export function layOutMachineItem(layout: Layout, item: MachineItem, indent: number): void {
  switch (item.kind) {
    case 'declaration':
      layOutDeclaration(layout, item, indent);
      return;
    case 'table':
      layOutTable(layout, item, indent);
      return;
    case 'rule':
      layOutRule(layout, item, indent);
      return;
    case 'value':
      leaf(layout, item, indent);
      titled(layout, item.title, indent);
      return;
    case 'coupled':
    case 'variant':
    case 'never':
    case 'broken':
      leaf(layout, item, indent);
  }
}

function layOutDeclaration(layout: Layout, declaration: Declaration, indent: number): void {
  const { source, plan } = layout;
  const { clauses } = declaration;
  const extent = leaf(layout, declaration, indent);
  titled(layout, declaration.title, indent);
  wideBetween(layout, clauses);
  if (fitsOneLine(layout, extent, indent)) return;
  for (const [i, clause] of clauses.entries()) {
    const { first, last } = extentOf(layout, clause);
    // How many there are stands with the name: `fastener head-bolts "head bolts" x6`.
    if (i === 0 && clause.clause === 'count') plan.together(first, indent + STEP);
    else plan.newLine(first, indent + STEP, NONE);
    plan.continued(first + 1, last, indent + 2 * STEP);
    if (clause.clause === 'plan') layOutPlan(layout, clause, indent + STEP);
  }
  // The first clause begins a line, so that no second space is left over.
  if (clauses[1]) plan.wide[source.at(clauses[1].start)] = 0;
}

/** The stages on one line where they fit, else each on its own. */
function layOutPlan(layout: Layout, clause: Clause & { plan: Plan }, indent: number): void {
  const { source, plan } = layout;
  const { first, last } = extentOf(layout, clause);
  const brace = source.openingBrace(first, last);
  const closing = source.partner[brace] ?? -1;
  if (closing < 0) return;
  plan.together(brace, indent);
  const fits = indent + plan.width(first, last) <= WIDTH && onlyBetweenStages(layout, brace, closing);
  if (fits) {
    for (let i = brace + 1; i <= closing; i += 1) plan.together(i, indent + STEP);
    return;
  }
  block(layout, brace, indent, {
    children: clause.plan.stages,
    each: (stage, inner) => continued(layout, stage, inner),
  });
}

/** The author's line breaks inside the braces stand where semicolons part the stages anyway. */
function onlyBetweenStages(layout: Layout, brace: number, closing: number): boolean {
  const { source } = layout;
  for (let i = brace + 1; i <= closing; i += 1) {
    if (source.hasComment(i)) return false;
    if (!source.breaksBefore(i)) continue;
    if (i !== brace + 1 && i !== closing && !source.is(i - 1, ';') && !source.is(i, ';')) return false;
  }
  return true;
}

function layOutTable(layout: Layout, table: Table, indent: number): void {
  const extent = leaf(layout, table, indent);
  const brace = layout.source.openingBrace(extent.first, extent.last);
  head(layout, table, table.title, brace, indent);
  if (table.rows.length <= 1 && fitsOneLine(layout, extent, indent)) return;
  block(layout, brace, indent, {
    children: table.rows,
    each: (row, inner) => continued(layout, row, inner),
  });
}

function layOutRule(layout: Layout, rule: Rule, indent: number): void {
  const { source, plan } = layout;
  const extent = leaf(layout, rule, indent);
  const brace = source.openingBrace(extent.first, extent.last);
  head(layout, rule, rule.title, brace, indent);
  for (const body of rule.bodies) {
    if (body.trigger && body.demanded) plan.wide[source.at(body.demanded.start) - 1] = 1;
  }
  if (rule.bodies.length <= 1 && fitsOneLine(layout, extent, indent)) return;
  block(layout, brace, indent, {
    children: rule.bodies,
    each: (body, inner) => continued(layout, body, inner),
  });
}
