/** The author's own texts: `{belt-give}` becomes the value with its unit. */
import type { Text } from '../../../grammar/syntax/tree.ts';
import { bothUnits, type MeasureOptions, measureOf } from '../../lists/measures.ts';
import type { Model } from '../../model/model.ts';
import { evaluate } from '../../model/values.ts';
import type { Measure, Rich } from '../document/types.ts';
import { sentence, text } from './rich.ts';

const BOTH: MeasureOptions = { secondUnits: true };

/** As it was written, values put in, what loop variables stand for too. */
export function said(
  one: Text | undefined,
  model: Model,
  measures: MeasureOptions = BOTH,
  bound: ReadonlyMap<string, string> = new Map(),
): Rich {
  if (!one) return [];
  const rich: Rich = [];
  let at = 0;
  const { value } = one;
  for (const match of value.matchAll(/\{([^{}\s]+)\}/g)) {
    const name = match[1]!;
    if (!one.holes.some((hole) => hole.text === name)) continue;
    rich.push(...text(value.slice(at, match.index)));
    at = match.index + match[0].length;
    const measure = valueNamed(name, model, measures);
    if (measure) rich.push({ kind: 'measure', text: bothUnits(measure), measure });
    else rich.push(...text(bound.get(name) ?? name.replaceAll('-', ' ')));
  }
  rich.push(...text(value.slice(at)));
  return rich;
}

/** A text of the author's that is a sentence of its own. */
export function saidSentence(
  one: Text | undefined,
  model: Model,
  measures?: MeasureOptions,
  bound?: ReadonlyMap<string, string>,
): Rich {
  return sentence(said(one, model, measures, bound));
}

/** The same as plain text, inside a sentence: without a full stop at its end. */
export function sayable(one: Text | undefined, model: Model, measures?: MeasureOptions): string {
  return said(one, model, measures)
    .map((run) => run.text)
    .join('')
    .trim()
    .replace(/\.$/, '');
}

export function valueNamed(name: string, model: Model, measures: MeasureOptions): Measure | undefined {
  const expression = model.values.get(name)?.expression;
  const outcome = expression && evaluate(expression, (other) => model.values.get(other)?.expression);
  return outcome?.ok ? measureOf(outcome.value, measures) : undefined;
}
