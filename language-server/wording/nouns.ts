/**
 * Titles of things as English noun phrases: which word is the head, one and several of it, whether it takes an article.
 * `bolts of the cooling unit` has the head `bolts`; `oil, ISO VG 100` has `oil`. Common practice, no source.
 */

/** The title without an article at its front. */
export function bare(title: string): string {
  return title.trim().replace(/^(?:the|a|an)\s+/i, '');
}

/** Where the head noun ends: before a preposition, a comma, a bracket or a relative clause. */
const AFTER_HEAD =
  /(?:\s{1,9}(?:of|for|on|in|with|to|from|under|at|between|behind|by|that|which|and)\s|\s{0,9}[,(;:]|\s{1,9}\d)/i;

/** The words up to and with the head noun, and the rest. */
export function headAndRest(title: string): { head: string; rest: string } {
  const text = bare(title);
  const at = text.search(AFTER_HEAD);
  return at <= 0 ? { head: text, rest: '' } : { head: text.slice(0, at), rest: text.slice(at) };
}

function lastWord(head: string): string {
  return head.match(/[\p{L}'-]+/gu)?.findLast((one) => /\p{L}/u.test(one)) ?? head;
}

const ONLY_PLURAL: ReadonlySet<string> = new Set(
  'pliers scissors tweezers tongs snips calipers feelers'.split(' '),
);
const SAME: ReadonlySet<string> = new Set(['series', 'apparatus']);
const IRREGULAR: readonly (readonly [string, string])[] = [
  ['tooth', 'teeth'],
  ['foot', 'feet'],
  ['half', 'halves'],
  ['shelf', 'shelves'],
  ['knife', 'knives'],
  ['leaf', 'leaves'],
  ['axis', 'axes'],
  ['radius', 'radii'],
  ['chassis', 'chassis'],
  ['man', 'men'],
];
const TO_ONE = new Map(IRREGULAR.map(([one, many]) => [many, one]));
const TO_MANY = new Map(IRREGULAR);

/** Whether the head of a title is a plural: `cover bolts`, `teeth of the wheel`; not `compass`, `chassis`. */
export function isPlural(title: string): boolean {
  const { head } = headAndRest(title);
  const word = lastWord(head).toLowerCase();
  if (
    /\s{1,9}and\s+/.test(` ${bare(title)} `) &&
    /^[^,(]*\band\b/.test(bare(title)) &&
    AND_JOINS.test(bare(title))
  )
    return true;
  if (ONLY_PLURAL.has(word) || (TO_ONE.has(word) && !TO_MANY.has(word))) return true;
  return /s$/.test(word) && !/(?:ss|us|is|ys|gas|lens|bias|canvas|atlas|series|brass|mains|news)$/.test(word);
}

/** `hoist and sling`: two things under one title, no preposition before the `and`. */
const AND_JOINS = /^(?:(?!\b(?:of|for|on|in|with|to)\b)[^,(])*\sand\s/;

/** The title of one of them: `cover bolts` → `cover bolt`. A title that is one already stays. */
export function singular(title: string): string {
  const { head, rest } = headAndRest(title);
  const word = lastWord(head);
  const lower = word.toLowerCase();
  if (!isPlural(head) || ONLY_PLURAL.has(lower) || SAME.has(lower)) return head + rest;
  return replaceLast(head, word, TO_ONE.get(lower) ?? oneOf(word)) + rest;
}

/** The title of several: `M6 screw` → `M6 screws`. */
export function plural(title: string): string {
  const { head, rest } = headAndRest(title);
  const word = lastWord(head);
  const lower = word.toLowerCase();
  if (isPlural(head) || SAME.has(lower)) return head + rest;
  return replaceLast(head, word, TO_MANY.get(lower) ?? manyOf(word)) + rest;
}

function oneOf(word: string): string {
  if (/ies$/i.test(word) && word.length > 4) return `${word.slice(0, -3)}y`;
  if (/(?:sses|shes|ches|xes|zes)$/i.test(word)) return word.slice(0, -2);
  return word.slice(0, -1);
}

function manyOf(word: string): string {
  if (/[^aeiou]y$/i.test(word)) return `${word.slice(0, -1)}ies`;
  if (/(?:s|sh|ch|x|z)$/i.test(word)) return `${word}es`;
  return `${word}s`;
}

function replaceLast(head: string, word: string, by: string): string {
  const at = head.lastIndexOf(word);
  return head.slice(0, at) + by + head.slice(at + word.length);
}

const MASS: ReadonlySet<string> = new Set(
  `oil grease compound fluid spray sealant cleaner paste water degreaser adhesive lubricant alcohol coolant refrigerant
  solvent cloth wire tape strip film lacquer paint gas air fuel petrol diesel antifreeze glue putty wax soap sealer
  nitrogen oxygen acid electrolyte sand dust foam paper emery`.split(/\s+/),
);

/** Something poured, smeared or cut off, not counted: no article where it is put to use (`with grease`). */
export function isMass(title: string): boolean {
  return MASS.has(lastWord(headAndRest(title).head).toLowerCase());
}

/** `a` or `an`, by the sound of what follows: `an O-ring`, `an M8 bolt`, `a unit`. */
export function article(phrase: string): 'a' | 'an' {
  const word = /^[^\s-]+/.exec(phrase.trim())?.[0] ?? '';
  // Letters said one by one: M8, O-ring, SAE, LED.
  if (/^[A-Z](?:\d|$)/.test(word) || /^[A-Z]{2,}$/.test(word))
    return /^[AEFHILMNORSX]/.test(word) ? 'an' : 'a';
  if (/^(?:8|11|18)(?:\D|$)/.test(word)) return 'an';
  if (/^(?:uni|use|usu|eu|one|once)/i.test(word)) return 'a';
  if (/^(?:hour|heir|honest)/i.test(word)) return 'an';
  return /^[aeiou]/i.test(word) ? 'an' : 'a';
}

const NUMBERS = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');

/** Up to twelve in words. */
export function numberWord(count: number): string {
  return NUMBERS[count] ?? String(count);
}
