/**
 * Reads a quantity as an author types it, or as a sentence for readers prints it.
 *
 * Source forms: `25 N·m`, `1/6 turn`, `5..60 N·m`, `25 ± 3 N·m`, `25 +- 3 N·m`, `500 +1/-0 micron`,
 * `25 N·m ± 5 %`, `1 h 30 min`, `at least 20 N·m`, `up to 0.04 mm`, `over 0.04 mm`. Sentences may also
 * say `5 to 60 N·m` and `28–33 ft-lb`.
 *
 * Not here: the grammar around quantities. The parser finds where a quantity begins and ends and may
 * hand its text over when somebody asks what it means.
 */

import { blanks, isDigit } from './characters.ts';
import { bad, good, type Outcome } from './problem.ts';
import { oneSided, type Quantity } from './quantity.ts';
import { scanBody } from './scan.ts';

/** Reads the whole text as one quantity. Offsets in a problem are offsets in `text`. */
export function readQuantity(text: string): Outcome<Quantity> {
  const known = remembered.get(text);
  if (known !== undefined) return known;
  const outcome = readWhole(text);
  // The same few texts are asked for over and over while a file is edited; the bound keeps a long-running editor small.
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  remembered.set(text, outcome);
  return outcome;
}

const MOST_REMEMBERED = 5000;
const remembered = new Map<string, Outcome<Quantity>>();

type SidedForm = 'at least' | 'at most' | 'over' | 'below';

const prefixes: readonly (readonly [string, SidedForm])[] = [
  ['at least ', 'at least'],
  ['at most ', 'at most'],
  ['not over ', 'at most'],
  ['up to ', 'at most'],
  ['over ', 'over'],
  ['below ', 'below'],
];

function readWhole(text: string): Outcome<Quantity> {
  let at = blanks(text, 0);
  let form: SidedForm | undefined;
  for (const [words, meaning] of prefixes) {
    if (text.startsWith(words, at)) {
      form = meaning;
      at = blanks(text, at + words.length);
      break;
    }
  }
  const { outcome, to } = scanBody(text, at);
  if (!outcome.ok) return outcome;
  const end = blanks(text, to);
  if (end < text.length) {
    const rest = text.slice(end);
    if (isDigit(text, end)) {
      return bad('unit-missing', `The number ${rest.trim()} has no unit.`, [], end, text.length);
    }
    return bad(
      'text-left-over',
      `After the quantity there is something else: ${rest.trim()}.`,
      [],
      end,
      text.length,
    );
  }
  return form === undefined ? outcome : sided(form, outcome.value, at, end);
}

function sided(form: SidedForm, q: Quantity, from: number, to: number): Outcome<Quantity> {
  if (q.form !== 'value' || q.nominal === undefined || q.step === undefined) {
    return bad(
      'one-number-expected',
      `After "${form}" stands one number, not a range or a tolerance.`,
      [],
      from,
      to,
    );
  }
  const one = oneSided(form, { value: q.nominal, step: q.step, fraction: q.fraction === true }, q.unit);
  return good(q.parts === undefined ? one : { ...one, parts: q.parts });
}
