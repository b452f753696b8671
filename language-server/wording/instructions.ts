/**
 * Instructions in a sentence: a second one, one that is no command, one that ends at a value with no limit. English, and
 * careful: what cannot be told for certain is left alone.
 *
 * Sources: ASD-STE100 rules 5.2 (one instruction a sentence, but for actions done together) and 5.3 (imperative), numbers
 * as in issue 9; its exceptions are close pairs (`remove and discard`), actions at the same time (`hold … and install`)
 * and a result or limit right after a measurement.
 */
import { findQuantities } from '../../grammar/quantity/index.ts';
import { CONDITION, commandVerb, isCommand } from './commands.ts';

export interface Found {
  /** Offsets in the sentence. */
  readonly from: number;
  readonly to: number;
}

/** The second instruction of a sentence, from its verb on, to the end of its clause. */
export function secondInstructionIn(sentence: string): (Found & { verb: string }) | undefined {
  let start = 0;
  if (CONDITION.test(sentence)) {
    start = sentence.indexOf(',') + 1;
    if (start === 0) return undefined;
  }
  const first = commandVerb(sentence.slice(start));
  // What is not done, what goes on meanwhile, and what is found out have more to say.
  if (first === undefined || TOGETHER.has(first)) return undefined;
  if (NOT_ALONE.test(sentence)) return undefined;
  for (const match of sentence.matchAll(FURTHER)) {
    const from = match.index + match[0].length;
    if (match.index < start) continue;
    const rest = sentence.slice(from);
    const verb = commandVerb(rest);
    if (verb === undefined || RESULT.has(verb)) continue;
    const end = /[,;:.]/.exec(rest)?.index ?? rest.length;
    return { from, to: from + end, verb };
  }
  return undefined;
}

const NOT_ALONE = /\b(do not|don't|never|at the same time|meanwhile|while|together)\b/i;
const FURTHER = /(?:,?\s{1,9}(?:and|then|and then)|,|;|\.\s)\s{1,9}(?=[a-z])/gi;

/** Verbs whose sentence may go on with what is done at the same time, or with what is found. */
const TOGETHER: ReadonlySet<string> = new Set(
  `hold keep support push pull press steady lift grip guide let leave measure check read record look listen make note
  inspect weigh compare see feel observe watch find turn move use with go wait`.split(/\s+/),
);
/** Verbs that say what comes of it. */
const RESULT: ReadonlySet<string> = new Set(
  'record note see check compare look listen make hold keep let leave read write'.split(' '),
);

/** What is to be done, said as if it were a state: `the bolts must be tightened`, `the fitter should remove`. */
export function notImperativeIn(sentence: string): (Found & { words: string }) | undefined {
  if (!OBLIGED.test(sentence)) return undefined;
  for (const match of [passiveIn(sentence), PERSON.exec(sentence)]) {
    if (!match) continue;
    // `Do not run it until the bolts are to be …`: after a condition it is a state that is asked for.
    if (
      /\b(if|until|when|unless|whether|that|which|who|before|after|once)\b/i.test(
        sentence.slice(0, match.index),
      )
    )
      continue;
    if (isCommand(sentence)) continue;
    return { from: match.index, to: match.index + match[0].length, words: match[0] };
  }
  return undefined;
}

/** A word that what follows cannot do without: most sentences have none. */
const OBLIGED = /\b(?:must|shall|should|has|have|needs?|ought|is|are|can)\b/i;

/** The words are looked up, not written into the expression: compiled, they cost more than a check of a usual file. */
function passiveIn(sentence: string): RegExpExecArray | undefined {
  for (const match of sentence.matchAll(PASSIVE))
    if (match[1] === undefined || DONE.has(match[1].toLowerCase())) return match;
  return undefined;
}

const DONE: ReadonlySet<string> = new Set(
  `removed tightened torqued retightened cleaned installed reinstalled refitted replaced renewed checked inspected
measured lubricated greased drained filled refilled bled loosened slackened turned rotated coated applied marked disconnected
reconnected recorded discarded lifted lowered adjusted tested wiped washed blown pulled pushed pressed unscrewed dismantled
assembled repeated noted`.split(/\s+/),
);

const PASSIVE =
  /\b(?:(?:must|shall|should|has to|have to|needs? to|ought to|is to|are to)\s+(?:now |then |first |also )?be\s+(?:\w+ly\s+)?(\w+)|can (?:now |then )?be continued)/gi;

const PERSON =
  /^(?:you|the (?:mechanic|technician|operator|fitter|driver|electrician|engineer|helper|assistant)|one)\s+(?:must|shall|should|has to|have to|needs? to|ought to)\s+(?!be\b|have\b|not be\b)\w+/i;

/** `to about 3 mm`: a value to be reached that says not how near. */
export function approximateIn(sentence: string): (Found & { words: string }) | undefined {
  if (!/\d/.test(sentence)) return undefined;
  for (const { from, to, quantity } of findQuantities(sentence)) {
    if (!LIMITED.has(quantity.unit.kind)) continue;
    const before = sentence.slice(0, from);
    const word = /\b(about|approximately|approx\.?|roughly|around|nearly|some)\s+$/i.exec(before);
    if (!word) continue;
    return { from: word.index, to, words: sentence.slice(word.index, to) };
  }
  return undefined;
}

const LIMITED: ReadonlySet<string> = new Set(['torque', 'length', 'pressure', 'force', 'voltage', 'current']);
