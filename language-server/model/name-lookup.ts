/**
 * What one name in a procedure stands for: a thing of the machine, a value, a state, or a name of the procedure itself. What
 * is found is noted, and so is what is not there: the facts of `unknown-name`, `wrong-kind` and their like.
 */
import type { Condition, Expression, Name, Quantity, Ref, Span, Text } from '../../grammar/syntax/tree.ts';
import type { Kind } from '../../grammar/tokens/verbs.ts';
import type { Place } from '../report/finding.ts';
import { itemsOf } from './items.ts';
import { unknownPosition, wrongKind } from './kind-faults.ts';
import type { Model } from './model.ts';
import { type Local, type ProcedureNames, Scope } from './name-scope.ts';
import { duplicateName, findProcedure, type LoadedFile, unknownName, unknownValue } from './names.ts';
import { stateFaults } from './state-words.ts';

export class NameLookup {
  readonly result: ProcedureNames = { uses: [], locals: [], facts: [] };
  readonly scope = new Scope();
  readonly used = new Set<Local>();
  readonly model: Model;
  readonly file: LoadedFile;
  private readonly visible: readonly LoadedFile[];

  constructor(model: Model, file: LoadedFile, visible: readonly LoadedFile[]) {
    this.model = model;
    this.file = file;
    this.visible = visible;
  }

  declare(name: Name, what: Local['what'], values?: readonly string[]): void {
    const at = this.at(name);
    const earlier = this.scope.get(name.text);
    if (
      earlier &&
      what !== 'loop variable' &&
      !(what === 'measured value' && earlier.what === 'measured value')
    ) {
      this.result.facts.push(
        duplicateName(this.file.path, name, what, { file: earlier.at.file, name: earlier.at }),
      );
      return;
    }
    const local: Local = { name: name.text, what, at, ...(values ? { values } : {}) };
    this.scope.set(name.text, local);
    this.result.locals.push(local);
    if (earlier && this.used.has(earlier)) this.used.add(local);
  }

  /** What is written down may be named later; it need not be, and it may bear the name of something else. */
  written(topic: Name): void {
    if (this.scope.has(topic.text)) return;
    this.declare(topic, 'measured value');
    this.used.add(this.scope.get(topic.text)!);
  }

  condition(condition: Condition): void {
    switch (condition.kind) {
      case 'and':
        for (const part of condition.parts) this.condition(part);
        return;
      case 'state':
        this.thing(condition.ref);
        this.state(condition.state, [condition.ref]);
        return;
      case 'axis': {
        const local = this.scope.get(condition.axis.text);
        const variant = this.model.variants.get(condition.axis.text);
        const values = local?.values ?? variant?.values;
        if (local) {
          this.used.add(local);
          this.result.uses.push({ at: this.at(condition.axis), local });
        }
        if (!values) {
          if (!local) {
            const known = [
              ...this.model.variants.keys(),
              ...[...this.scope.values()].filter((one) => one.values).map((one) => one.name),
            ];
            this.result.facts.push(unknownName(this.file.path, condition.axis, 'variant', known));
          }
          return;
        }
        for (const value of condition.values) {
          if (values.includes(value.text)) continue;
          this.result.facts.push(unknownValue(this.file.path, value, condition.axis, values));
        }
        return;
      }
      case 'seen':
        this.text(condition.text);
        return;
    }
  }

  expression(expression: Expression): void {
    switch (expression.kind) {
      case 'name':
        this.valueNamed(expression.ref.name);
        return;
      case 'binary':
        this.expression(expression.left);
        if (expression.right) this.expression(expression.right);
        return;
      case 'call':
        for (const argument of expression.arguments) this.expression(argument);
        return;
      case 'quantity':
        return;
    }
  }

  /** A declared value in the place of a quantity. */
  value(quantity: Quantity | undefined): void {
    if (quantity?.named) this.valueNamed(quantity.named.name);
  }

  /** `{name}` in a text stands for a value. */
  text(text: Text | undefined): void {
    for (const hole of text?.holes ?? []) this.valueNamed(hole);
  }

  private valueNamed(name: Name): void {
    const { model, scope } = this;
    const ref: Ref = { name, positions: [], start: name.start, end: name.end };
    if (this.local(ref) || model.values.has(name.text) || model.variants.has(name.text)) return;
    const thing = model.byName.get(name.text);
    if (thing) this.result.uses.push({ at: this.at(name), thing });
    else if (model.machine) {
      const values = [...scope.values()].filter((local) => local.what !== 'task');
      const known = [...model.values.keys(), ...values.map((local) => local.name)];
      this.result.facts.push(unknownName(this.file.path, name, 'value', known));
    }
  }

  state(state: Name, refs: readonly Ref[]): void {
    const things = refs.flatMap((ref) => this.model.byName.get(ref.name.text) ?? []);
    this.result.facts.push(...stateFaults(this.file.path, state, things));
  }

  task(name: Name): void {
    this.scope.wide = true;
    const local = this.scope.get(name.text);
    if (local?.what === 'task') {
      this.used.add(local);
      this.result.uses.push({ at: this.at(name), local });
    } else if (!findProcedure(this.visible, name.text)) this.missingProcedure(name);
  }

  missingProcedure(name: Name): void {
    const known = [
      ...[...this.scope.values()].filter((local) => local.what === 'task').map((local) => local.name),
      ...this.visible.flatMap((file) => file.procedures.flatMap((procedure) => procedure.name?.text ?? [])),
    ];
    this.result.facts.push({
      ...unknownName(this.file.path, name, 'procedure or task', known),
      check: 'procedure-missing',
    });
  }

  local(ref: Ref): Local | undefined {
    const local = this.scope.get(ref.name.text);
    if (!local) return undefined;
    this.used.add(local);
    this.result.uses.push({ at: this.at(ref.name), local });
    return local;
  }

  name(name: Name): void {
    this.thing({ name, positions: [], start: name.start, end: name.end });
  }

  /** What a part is chosen by is a value, what it is chosen from a table. */
  chosenFrom(name: Name, tail: 'by' | 'from'): void {
    if (tail === 'by') this.valueNamed(name);
    else if (this.model.machine)
      this.result.facts.push(unknownName(this.file.path, name, 'table', this.model.tables.keys()));
  }

  /** `what` is looked for, where any thing will not do; `by` is the word that allows only some kinds. */
  thing(ref: Ref, what = 'thing', allowed?: readonly Kind[], by = ''): void {
    const thing = this.model.byName.get(ref.name.text);
    if (!thing) {
      if (this.local(ref) || this.model.values.has(ref.name.text) || this.model.tables.has(ref.name.text))
        return;
      // Where no machine is known, its names cannot be.
      if (this.model.machine)
        this.result.facts.push(
          unknownName(
            this.file.path,
            ref.name,
            allowed?.length === 1 ? allowed[0]! : what,
            this.fitting(allowed),
            [...this.model.byName.keys()],
          ),
        );
      return;
    }
    this.result.uses.push({ at: this.at(ref.name), thing });
    if (allowed && allowed.length > 0 && !(allowed as readonly string[]).includes(thing.type)) {
      this.result.facts.push(wrongKind(this.file.path, ref, thing, allowed, by));
      return;
    }
    const fixed = ref.positions.filter(
      (position) => !this.scope.has(position.from) && !(position.to && this.scope.has(position.to)),
    );
    const { unknown } = itemsOf(thing, { ...ref, positions: fixed });
    if (unknown && fixed.length > 0) {
      this.result.facts.push(unknownPosition(this.file.path, unknown, thing));
    }
    for (const position of ref.positions) {
      const local = this.scope.get(position.from);
      if (local) this.used.add(local);
    }
  }

  /** Names of the right kind. */
  private fitting(allowed: readonly Kind[] | undefined): string[] {
    return [...this.model.byName.values()]
      .filter(({ type }) => !allowed || (allowed as readonly string[]).includes(type))
      .map(({ name }) => name);
  }

  at(span: Span): Place {
    return { file: this.file.path, start: span.start, end: span.end };
  }
}
