/**
 * Conditions on variants as sets of cases. Conditions on states and findings are the execution's business;
 * this file only knows axes that are declared.
 */
import type { Condition } from '../../grammar/syntax/tree.ts';
import { type CaseSet, type Cases, EVERY } from '../execution/cases.ts';
import type { Fact } from './facts.ts';
import { unknownName, unknownValue } from './names.ts';

export type Variants = ReadonlyMap<string, { axis: number; values: readonly string[] }>;

/** The cases that a condition on axes means; undefined where it is about something else. */
export function casesOf(
  condition: Condition,
  file: string,
  cases: Cases,
  axes: Variants,
  facts: Fact[],
): CaseSet | undefined {
  if (condition.kind === 'and') {
    let result: CaseSet = EVERY;
    for (const part of condition.parts) {
      const set = casesOf(part, file, cases, axes, facts);
      if (set !== undefined) result = cases.and(result, set);
    }
    return result;
  }
  if (condition.kind !== 'axis') return undefined;
  const axis = axes.get(condition.axis.text);
  if (!axis) {
    facts.push(unknownName(file, condition.axis, 'variant', axes.keys()));
    return undefined;
  }
  const values: number[] = [];
  for (const value of condition.values) {
    const index = axis.values.indexOf(value.text);
    if (index >= 0) values.push(index);
    else facts.push(unknownValue(file, value, condition.axis, axis.values));
  }
  if (values.length === 0) return undefined;
  const set = cases.oneOf(axis.axis, values);
  return condition.negated ? cases.not(set) : set;
}
