/**
 * Titles of things inside English sentences: singular and plural, and positions as a reader says them. Works
 * on the English of titles only; a title that it cannot judge is taken as singular.
 */
import type { Mentioned } from '../model/facts.ts';
import { list } from '../model/model.ts';

/** `head bolts`, `head bolts #1 to #4`, `head bolt #3`, `left brake pad`. */
export function called({ thing, items }: Mentioned): string {
  const { title, positions } = thing;
  if (positions.length <= 1) return title;
  const all = !items || items.length >= positions.length;
  if (all) return plural(title);
  const names = items.map((item) => positions[item - thing.first] ?? '');
  const head = names.length === 1 ? singular(title) : plural(title);
  return areNumbers(names) ? `${head} ${numbers(names)}` : `${list(names)} ${head}`;
}

/** With its article: `the head bolts`, `the left brake pad`; what carries a number needs none: `head bolt #3`. */
export function definite(mentioned: Mentioned): string {
  const words = called(mentioned);
  return /#\d/.test(words) ? words : `the ${words}`;
}

/** Whether the words for it ask for `are`. */
export function isPluralMention({ thing, items }: Mentioned): boolean {
  if (thing.positions.length <= 1) return isPlural(thing.title);
  return (items?.length ?? thing.positions.length) > 1;
}

/** Whether a title names many: by the word that the rest of it hangs on. */
export function isPlural(title: string): boolean {
  const { noun } = split(title);
  return /[^su]s$/i.test(noun) && !/(is|gas|lens|canvas|bias|series)$/i.test(noun);
}

/** `copper washer of the valve` -> `copper washers of the valve` */
export function plural(title: string): string {
  if (isPlural(title)) return title;
  const { noun, rest } = split(title);
  if (!/[a-z]$/i.test(noun) || /(series|equipment|gear)$/i.test(noun)) return title;
  if (/(s|x|ch|sh)$/i.test(noun)) return `${noun}es${rest}`;
  if (/[^aeiou]y$/i.test(noun)) return `${noun.slice(0, -1)}ies${rest}`;
  return `${noun}s${rest}`;
}

/** `big-end caps` -> `big-end cap` */
export function singular(title: string): string {
  if (!isPlural(title)) return title;
  const { noun, rest } = split(title);
  if (/(ss|x|ch|sh)es$/i.test(noun)) return `${noun.slice(0, -2)}${rest}`;
  if (/ies$/i.test(noun)) return `${noun.slice(0, -3)}y${rest}`;
  return `${noun.slice(0, -1)}${rest}`;
}

/** The words up to and with the noun that counts, and what hangs on it: `bolts`, ` of the head`. */
function split(title: string): { noun: string; rest: string } {
  const at = title.search(/ (of|on|for|with|in|to|at|from|under|between) |, | \(/);
  return at < 0 ? { noun: title, rest: '' } : { noun: title.slice(0, at), rest: title.slice(at) };
}

function areNumbers(names: readonly string[]): boolean {
  return names.every((name) => /^\d+$/.test(name));
}

/** `#1, #2, #3, #5` -> `#1 to #3 and #5` */
function numbers(names: readonly string[]): string {
  const words: string[] = [];
  for (let from = 0; from < names.length; ) {
    let to = from;
    while (Number(names[to + 1]) === Number(names[to]) + 1) to++;
    if (to - from >= 2) words.push(`#${names[from]} to #${names[to]}`);
    else for (let index = from; index <= to; index++) words.push(`#${names[index]}`);
    from = to + 1;
  }
  return list(words);
}
