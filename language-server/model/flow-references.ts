/**
 * Item numbers and figures in the sentences of steps (`reference-wrong`), where it is certain that they are wrong:
 *
 * - a sentence that is nothing but a reference (“Item 9.”, “Items 25 and 26, figure 3-39.”) and names none of the
 *   item numbers of what the step acts on;
 * - one thing that is the same items of one figure here and of another figure there: item numbers belong to a figure.
 *
 * A number inside a longer sentence may be another thing that the sentence is about: nothing is said of it.
 */
import type { Action } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { list, type Model, type Thing } from './model.ts';
import type { Survey } from './survey.ts';

interface Reference {
  items: string[];
  figure?: string;
}

export function referenceFaults(model: Model, survey: Survey, { path }: { path: string }): Fact[] {
  const referring = survey.each('references', [], (one) =>
    one.kind === 'action' && one.text && one.objects.length === 1 && referenceIn(one.text.value) ? [one] : [],
  );
  const facts: Fact[] = [];
  const figures = new Map<string, { figure: string; action: Action }>();
  for (const statement of referring) {
    if (!statement.text) continue;
    const thing = model.byName.get(statement.objects[0]!.name.text);
    const reference = referenceIn(statement.text.value);
    if (!thing || !reference) continue;
    const at = { file: path, start: statement.text.start, end: statement.text.end };
    const own = numbersOf(thing);
    const wanted = list(own);
    if (own.length > 0 && !reference.items.some((item) => own.includes(item))) {
      facts.push({
        check: 'reference-wrong',
        at,
        subject: { thing },
        words: { of: 'item', items: list(reference.items), wanted },
        story: [{ at: thing.place, what: 'declared', thing }],
      });
    }
    const { figure } = reference;
    if (!figure) continue;
    const key = `${thing.name} ${reference.items.join(' ')}`;
    const earlier = figures.get(key);
    if (!earlier) figures.set(key, { figure, action: statement });
    else if (earlier.figure !== figure) {
      const { start, end } = earlier.action.text!;
      facts.push({
        check: 'reference-wrong',
        at,
        subject: { thing },
        words: { of: 'figure', items: list(reference.items), figure, earlier: earlier.figure },
        story: [{ at: { file: path, start, end }, what: 'declared' }],
      });
    }
  }
  return facts;
}

const ONLY_A_REFERENCE =
  /^\(?items? (\d+[a-z]?(?:(?:, | and |, and )\d+[a-z]?)*)(?:,? (?:of |in )?fig(?:ure|\.) ([\w.-]*\w))?\)?\.?$/i;

function referenceIn(sentence: string): Reference | undefined {
  const found = ONLY_A_REFERENCE.exec(sentence.trim());
  if (!found) return undefined;
  const items = found[1]!.split(/,? and |, /);
  return { items, ...(found[2] ? { figure: found[2] } : {}) };
}

/** The item numbers that a thing goes by: its own, and those in its title and in what it is also called. */
function numbersOf(thing: Thing): string[] {
  const numbers: string[] = [];
  for (const clause of thing.declaration.clauses) {
    if (clause.clause === 'item' && clause.number !== undefined) numbers.push(clause.number);
    if (clause.clause === 'also called')
      for (const { value } of clause.texts) numbers.push(...(value.match(/\d+[a-z]?/g) ?? []));
  }
  if (numbers.length > 0) numbers.push(...(thing.title.match(/\d+[a-z]?/g) ?? []));
  return [...new Set(numbers)];
}
