/**
 * Every name in a file with the part it plays there: what the tree says, before anybody knows what the name
 * stands for. Colouring, renaming and looking up read this one list.
 */
import type {
  Clause,
  Condition,
  Expression,
  Header,
  MachineItem,
  Name,
  Quantity,
  Ref,
  Selector,
  SourceFile,
  Span,
  StateClaim,
  Statement,
  Tail,
  Text,
} from '../../grammar/syntax/tree.ts';

export type Role =
  | 'machine'
  | 'procedure'
  | 'task'
  /** After `do`: a task, or another procedure. */
  | 'work'
  /** A thing of the machine, or something local that stands for one. */
  | 'thing'
  | 'value'
  /** After `by` and `from`: a table, a value or a thing. */
  | 'source'
  | 'table'
  | 'variant'
  /** What a condition asks: a variant, a choice or a named outcome. */
  | 'axis'
  | 'axis value'
  | 'choice'
  | 'measured value'
  | 'loop variable'
  | 'rule'
  | 'position'
  | 'state'
  | 'hazard'
  | 'harm'
  /** A word for what is done: `when removing`, `while turning`. */
  | 'doing'
  | 'clothing'
  | 'check'
  | 'outcome'
  | 'topic'
  | 'designation'
  | 'function'
  /** `any connection`, `that system`. */
  | 'kind';

export interface Occurrence extends Span {
  text: string;
  role: Role;
  /** The name is declared here. */
  declares: boolean;
  /** Of a position: the thing; of a value of an axis: the axis. */
  of?: string;
}

/** The names of a file in reading order. */
export function occurrences(tree: SourceFile): Occurrence[] {
  const walk = new Walk();
  for (const item of tree.items) {
    if (item.kind === 'machine') {
      walk.name(item.name, 'machine', true);
      walk.text(item.title);
      walk.name(item.extends, 'machine');
      for (const one of item.items) walk.machineItem(one);
    } else if (item.kind === 'procedure') {
      walk.name(item.name, 'procedure', true);
      walk.text(item.title);
      for (const header of item.headers) walk.header(header);
      walk.statements(item.body?.statements);
    } else if (item.kind !== 'use') walk.machineItem(item);
  }
  return walk.found.sort((a, b) => a.start - b.start);
}

class Walk {
  readonly found: Occurrence[] = [];

  name(name: Name | undefined, role: Role, declares = false, of?: string): void {
    if (!name || name.text === '') return;
    const { end, text } = name;
    // `for each #n`: the name is what stands behind the hash.
    const start = role === 'loop variable' ? end - text.length : name.start;
    this.found.push({ start, end, text, role, declares, ...(of === undefined ? {} : { of }) });
  }

  names(names: readonly Name[], role: Role, declares = false, of?: string): void {
    for (const name of names) this.name(name, role, declares, of);
  }

  ref(ref: Ref | undefined, role: Role = 'thing'): void {
    if (!ref) return;
    this.name(ref.name, role);
    this.positions(ref.positions, ref.name.text);
  }

  refs(refs: readonly Ref[], role: Role = 'thing'): void {
    for (const ref of refs) this.ref(ref, role);
  }

  /** `#left`, `#1..#4`: the words behind the hashes. */
  positions(positions: Ref['positions'], of: string | undefined): void {
    for (const { from, to, start, end } of positions) {
      const at = { start: start + 1, end: start + 1 + from.length };
      this.name({ ...at, text: from }, 'position', false, of);
      if (to !== undefined) this.name({ start: end - to.length, end, text: to }, 'position', false, of);
    }
  }

  text(text: Text | undefined): void {
    this.names(text?.holes ?? [], 'value');
  }

  quantity(quantity: Quantity | undefined): void {
    this.ref(quantity?.named, 'value');
  }

  expression(expression: Expression | undefined): void {
    switch (expression?.kind) {
      case 'quantity':
        this.quantity(expression.quantity);
        return;
      case 'name':
        this.ref(expression.ref, 'value');
        return;
      case 'binary':
        this.expression(expression.left);
        this.expression(expression.right);
        return;
      case 'call':
        this.name(expression.name, 'function');
        for (const one of expression.arguments) this.expression(one);
        return;
      default:
    }
  }

  condition(condition: Condition | undefined): void {
    switch (condition?.kind) {
      case 'axis':
        this.name(condition.axis, 'axis');
        this.names(condition.values, 'axis value', false, condition.axis.text);
        return;
      case 'state':
        this.ref(condition.ref);
        this.name(condition.state, 'state');
        return;
      case 'seen':
        this.text(condition.text);
        return;
      case 'and':
        for (const part of condition.parts) this.condition(part);
        return;
      default:
    }
  }

  claims(claims: readonly StateClaim[]): void {
    for (const claim of claims) {
      this.refs(claim.refs);
      this.name(claim.state, 'state');
      this.refs(claim.except);
    }
  }

  machineItem(item: MachineItem): void {
    if ('title' in item) this.text(item.title);
    switch (item.kind) {
      case 'declaration':
        this.name(item.name, 'thing', true);
        for (const clause of item.clauses) this.clause(clause, item.name?.text);
        return;
      case 'coupled':
        this.refs(item.refs);
        this.condition(item.while);
        return;
      case 'value':
        this.name(item.name, 'value', true);
        this.expression(item.expression);
        return;
      case 'table':
        this.name(item.name, 'table', true);
        for (const row of item.rows) {
          this.quantity(row.interval.quantity);
          for (const one of row.gives) this.expression(one);
        }
        return;
      case 'variant':
        this.name(item.name, 'variant', true);
        this.names(item.values, 'axis value', true, item.name?.text);
        return;
      case 'never':
        this.condition(item.condition);
        return;
      case 'rule':
        this.name(item.name, 'rule', true);
        for (const { trigger, demanded } of item.bodies)
          for (const pattern of [trigger, demanded]) {
            for (const selector of pattern?.selectors ?? []) this.selector(selector);
            if (pattern?.kind === 'state') this.name(pattern.state, 'state');
            if (pattern?.kind === 'event') this.quantity(pattern.quantity);
          }
        return;
      case 'broken':
        return;
      default:
        item satisfies never;
    }
  }

  private selector(selector: Selector): void {
    if (selector.kind === 'named') this.ref(selector.ref);
    else this.name(selector.what, 'kind');
    if (selector.kind === 'any' && selector.of) this.selector(selector.of);
  }

  private clause(clause: Clause, owner: string | undefined): void {
    if ('refs' in clause) this.refs(clause.refs);
    if ('to' in clause) this.refs(clause.to);
    if ('quantity' in clause) this.quantity(clause.quantity);
    if ('text' in clause) this.text(clause.text);
    switch (clause.clause) {
      case 'positions':
        this.names(clause.names, 'position', true, owner);
        return;
      case 'only':
        this.condition(clause.condition);
        return;
      case 'hazard':
        this.names(clause.hazards, 'hazard');
        this.names(clause.when, 'doing');
        this.name(clause.harm, 'harm');
        return;
      case 'holds':
        this.ref(clause.fluid);
        return;
      case 'thread':
      case 'class':
      case 'grade':
        this.name(clause.designation, 'designation');
        return;
      case 'order':
        if (clause.order?.kind === 'listed') this.positions(clause.order.positions, owner);
        return;
      case 'plan':
        for (const stage of clause.plan.stages) {
          if ('quantity' in stage) this.quantity(stage.quantity);
          if (stage.kind !== 'until') continue;
          this.text(stage.text);
          this.ref(stage.turning);
        }
        return;
      case 'normally':
        this.name(clause.state, 'state');
        return;
      default:
    }
  }

  header(header: Header): void {
    if ('text' in header) this.text(header.text);
    switch (header.header) {
      case 'for':
        this.refs(header.refs, 'machine');
        return;
      case 'time':
        this.quantity(header.quantity);
        return;
      case 'wear':
        this.names(header.names, 'clothing');
        return;
      case 'tools':
        this.refs(header.refs);
        return;
      case 'supplies':
        this.refs(header.refs);
        for (const { quantity, fluid } of header.fluids) {
          this.quantity(quantity);
          this.ref(fluid);
        }
        return;
      case 'starts with':
      case 'ends with':
        this.claims(header.claims);
        return;
      case 'starts where':
        this.ref(header.ref, 'procedure');
        return;
      case 'only':
        this.condition(header.condition);
        return;
      default:
    }
  }

  statements(statements: readonly Statement[] | undefined): void {
    for (const statement of statements ?? []) this.statement(statement);
  }

  private statement(statement: Statement): void {
    if ('title' in statement) this.text(statement.title);
    if ('text' in statement) this.text(statement.text);
    switch (statement.kind) {
      case 'action': {
        this.name(statement.topic, 'topic');
        this.refs(statement.objects);
        this.quantity(statement.quantity);
        this.expression(statement.expression);
        for (const tail of statement.tails) this.tail(tail, statement.objects[0]?.name.text);
        for (const outcome of statement.outcomes) {
          this.name(outcome.word, 'outcome');
          for (const { quantity } of outcome.intervals) this.quantity(quantity);
          this.statements(outcome.body?.statements);
        }
        return;
      }
      case 'task':
        this.name(statement.name, 'task', true);
        break;
      case 'notice':
        this.names(statement.hazards, 'hazard');
        break;
      case 'when':
      case 'if':
        this.condition(statement.condition);
        break;
      case 'choice':
        this.name(statement.name, 'choice', true);
        this.names(statement.values, 'axis value', true, statement.name?.text);
        break;
      case 'repeat':
        this.condition(statement.until);
        break;
      case 'for each':
        this.name(statement.variable, 'loop variable', true);
        if (statement.over?.kind === 'names') this.names(statement.over.names, 'thing');
        if (statement.over?.kind === 'positions') this.ref(statement.over.ref);
        break;
      case 'reverse':
        this.name(statement.task, 'task');
        this.refs(statement.except);
        break;
      case 'do':
        this.name(statement.ref, 'work');
        break;
      case 'allow':
        this.name(statement.check, 'check');
        this.text(statement.reason);
        break;
      case 'value':
        this.name(statement.name, 'value', true);
        this.expression(statement.expression);
        break;
      case 'step':
      case 'hold':
      case 'stop':
      case 'continues':
      case 'broken':
        break;
      default:
        statement satisfies never;
    }
    if ('body' in statement) this.statements(statement.body?.statements);
    if ('otherwise' in statement) this.statements(statement.otherwise?.statements);
  }

  private tail(tail: Tail, object: string | undefined): void {
    if ('quantity' in tail) this.quantity(tail.quantity);
    if ('text' in tail) this.text(tail.text);
    switch (tail.tail) {
      case 'holding':
        this.refs([...tail.refs, ...tail.with]);
        return;
      case 'while':
        this.name(tail.doing, 'doing');
        this.refs(tail.refs);
        return;
      case 'by':
      case 'from':
        this.refs(tail.refs, 'source');
        return;
      case 'in order':
        if (tail.order?.kind === 'listed') this.positions(tail.order.positions, object);
        return;
      case 'at':
        this.positions(tail.positions, object);
        this.refs(tail.refs);
        return;
      case 'as':
        this.name(tail.name, 'measured value', true);
        this.positions(tail.positions, undefined);
        return;
      case 'picture':
        this.text(tail.shows);
        return;
      case 'with':
      case 'into':
      case 'between':
      case 'of':
      case 'except':
      case 'to':
        this.refs(tail.refs);
        return;
      default:
    }
  }
}
