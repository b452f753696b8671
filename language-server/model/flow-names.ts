/** Names in the values and tables of a machine file that nothing declares: what a table gives, what a value adds up. */
import type { Expression, Name } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import type { Model } from './model.ts';
import { unknownName } from './names.ts';

/** Facts: `unknown-name`. A `value` is worked out from values; a row of a table may give a `thing` too. */
export function unknownIn(
  expressions: readonly Expression[],
  model: Model,
  what: 'value' | 'thing',
  path: string,
): Fact[] {
  const values = [...model.values.keys()];
  const known = what === 'value' ? values : [...model.byName.keys(), ...values];
  return expressions
    .flatMap(namesIn)
    .filter((name) => !known.includes(name.text))
    .map((name) => unknownName(path, name, what, known));
}

function namesIn(expression: Expression): Name[] {
  switch (expression.kind) {
    case 'quantity':
      return expression.quantity.named ? [expression.quantity.named.name] : [];
    case 'name':
      return [expression.ref.name];
    case 'call':
      return expression.arguments.flatMap(namesIn);
    case 'binary':
      return [...namesIn(expression.left), ...(expression.right ? namesIn(expression.right) : [])];
  }
}
