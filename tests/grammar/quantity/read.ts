/** Short cuts for tests: what must succeed is unwrapped, and says why when it does not. */
import {
  type Outcome,
  type Quantity,
  readQuantity,
  type Unit,
  unitNamed,
} from '../../../grammar/quantity/index.ts';

export function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`${outcome.problem.code}: ${outcome.problem.message}`);
  return outcome.value;
}

export function read(text: string): Quantity {
  return must(readQuantity(text));
}

export function unit(text: string): Unit {
  const found = unitNamed(text);
  if (found === undefined) throw new Error(`no unit ${text}`);
  return found;
}

/** The code of the problem, or what was read instead. */
export function problemOf(outcome: Outcome<unknown>): string {
  return outcome.ok
    ? `read as ${JSON.stringify(outcome.value, (_, v) => (typeof v === 'bigint' ? `${v}` : v))}`
    : outcome.problem.code;
}
