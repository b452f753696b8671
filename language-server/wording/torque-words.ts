/**
 * What a sentence for the technician says about tightness: the torques in it and what each is for, whether it
 * asks for a torque at all, whether it says where the value stands. English words only. Common practice, no source.
 *
 * Not here: whether a value is right (the model's fastening files).
 */
import { type FoundQuantity, findQuantities } from '../../grammar/quantity/index.ts';

/**
 * `value`: what the thing is tightened to. `other`: a limit, a wrench setting, a torque that turns something, or
 * one of several steps. `second`: the value before it once more, in another unit.
 */
export interface SaidTorque extends FoundQuantity {
  readonly role: 'value' | 'other' | 'second';
}

/** The torques of a sentence, in order. Offsets are in the sentence. */
export function torquesIn(sentence: string): SaidTorque[] {
  if (!hasDigit(sentence)) return [];
  const found = findQuantities(sentence);
  const torques: SaidTorque[] = [];
  let from = 0;
  let before: FoundQuantity | undefined;
  for (const one of found) {
    const between = sentence.slice(from, one.from);
    from = one.to;
    const first = before;
    before = one;
    if (one.quantity.unit.kind !== 'torque') continue;
    const second = first?.quantity.unit.kind === 'torque' && isSecond(sentence, first, one);
    torques.push({
      ...one,
      role: second ? 'second' : NOT_A_VALUE.test(lastClause(between)) ? 'other' : 'value',
    });
  }
  return torques;
}

/** Pairs such as `80 lbf·ft (110 N·m)`: one quantity and the same one in another unit. Of any kind. */
export function secondsIn(sentence: string): { first: FoundQuantity; second: FoundQuantity }[] {
  if (!/\(\s*[\d.]/.test(sentence)) return [];
  const found = findQuantities(sentence);
  return found.flatMap((second, index) => {
    const first = found[index - 1];
    if (!first || first.quantity.unit === second.quantity.unit) return [];
    if (first.quantity.unit.kind !== second.quantity.unit.kind) return [];
    return isSecond(sentence, first, second) ? [{ first, second }] : [];
  });
}

/** `to the specified torque`, `torque the nuts`: the sentence asks for a torque. */
export function asksForTorque(sentence: string): boolean {
  return /\btorqu/i.test(sentence);
}

/** `tighten securely`: tightness by a word that says nothing. */
export function isVaguelyTight(sentence: string): boolean {
  return /\b(securely|firmly|fully|properly|adequately|sufficiently|good and tight|tight enough)\b/i.test(
    sentence,
  );
}

/** The sentence says where the value stands, or how it is felt: nothing is missing then. */
export function tellsWhere(sentence: string): boolean {
  return (
    hasDigit(sentence) ||
    /\{|\b(until|maker|manufacturer|supplier|manual|handbook|table|chart|figure|plate|label|sticker|drawing|data|document|page|chapter|paragraph|section|instruction|order|stamped|marked|printed|as before|same)/i.test(
      sentence,
    )
  );
}

/** The turning angle is told by marks or parts of a turn, for which no gauge is needed. */
export function tellsAngleByMarks(sentence: string): boolean {
  return /\b(marks?|marked|paint|flats?|quarter|half|third|sixth|turns?|corner|clock)\b/i.test(sentence);
}

/** Two ends of one turning, and it is said which one counts. */
export function saysWhichWins(sentence: string): boolean {
  return /\b(whichever|first|earlier|either|unless|but not|even if|at most|no more|not more|stop)\b/i.test(
    sentence,
  );
}

export function hasDigit(text: string): boolean {
  return /\d/.test(text);
}

/** What makes a torque another thing than the value to tighten to, where it stands in front of it. */
const NOT_A_VALUE =
  /\b(not|never|no|exceed\w*|over|above|below|under|beyond|at most|at least|maximum|max|minimum|min|limit\w*|up to|less|more|range|from|between|set|setting|reads?|scale|wrench|break\w*|running|prevailing|drag|friction|turn\w*|rotat\w*|starting|first|initial\w*|then|second|final\w*|next|stages?|passe?s?|steps?|add|plus|by|old|former\w*|instead|against|holds?|takes?|loosen\w*|check\w*|if|when|where|while|about|run|snug\w*|nip\w*|light\w*|hand|finger\w*)\b/i;

/** The clause in which the value stands: after the last full stop, semicolon or colon. */
function lastClause(text: string): string {
  return text.slice(Math.max(text.lastIndexOf('. '), text.lastIndexOf(';'), text.lastIndexOf(': ')) + 1);
}

function isSecond(sentence: string, first: FoundQuantity, second: FoundQuantity): boolean {
  return /^ ?\($/.test(sentence.slice(first.to, second.from)) && sentence[second.to] === ')';
}
