/** A thing in a sentence: how many of it, which ones, with its article. */

import {
  article,
  bare,
  headAndRest,
  isMass,
  isPlural,
  numberWord,
  plural,
  singular,
} from '../../wording/nouns.ts';
import type { Rich } from '../document/types.ts';

export interface Noun {
  id: string;
  title: string;
  type: string;
  /** How many are meant; undefined where nobody says. */
  count: number | undefined;
  /** Names of the positions meant, where not all are. */
  positions: readonly string[];
  /** `x2`: some of them, whichever; `of more` where the group is known to be larger. */
  some: false | 'some' | 'of more';
  fresh: boolean;
  /** Thread as stamped, number in the figure, what a fastener holds: told where the reader meets it first. */
  thread?: string;
  item?: string;
  holds?: readonly Noun[];
}

export interface Phrase {
  /** Tells thread, figure number and what it holds. */
  introduced?: boolean;
  /** No article: `grease`, `bearing caps`. */
  without?: boolean;
}

/** `the six head bolts (M8×1.25) that hold the cylinder head`, `a new head gasket`, `cover bolt 3`. */
export function phrase(noun: Noun, how: Phrase = {}): Rich {
  const words = nounWords(noun, how.without ?? false);
  const hints = how.introduced ? [threadOf(noun), noun.item].filter((hint) => hint !== undefined) : [];
  const brackets = hints.length > 0 ? ` (${hints.join(', ')})` : '';
  const rich: Rich = [{ kind: 'thing', text: words + brackets, id: noun.id }];
  const held = how.introduced ? (noun.holds ?? []) : [];
  if (held.length === 0) return rich;
  rich.push({ kind: 'text', text: isMany(noun) ? ' that hold ' : ' that holds ' });
  held.forEach((one, index) => {
    const glue = index === 0 ? '' : index === held.length - 1 ? ' and ' : ', ';
    if (glue !== '') rich.push({ kind: 'text', text: glue });
    rich.push(...phrase(one));
  });
  return rich;
}

/** More than one, for `them`, `are`, `hold`. */
export function isMany(noun: Noun): boolean {
  if (noun.positions.length > 0) return noun.positions.length > 1;
  if (noun.count !== undefined && noun.count > 1) return true;
  return isPlural(titleOf(noun)) && (noun.count === undefined || isPlural(singular(titleOf(noun))));
}

function titleOf({ title }: Noun): string {
  return bracketed(bare(title));
}

/** `oil, ISO VG 100` → `oil (ISO VG 100)`: a comma would break the sentence. */
export function bracketed(title: string): string {
  return title.replace(/,([^,]+(?:,[^,]+)*)$/, (_, rest: string) => ` (${rest.trimStart()})`);
}

function nounWords(noun: Noun, without: boolean): string {
  const title = titleOf(noun);
  const { count, positions, fresh, some } = noun;
  const the = (words: string) => (without ? words : `the ${words}`);
  if (positions.length > 0) return positioned(noun, title, without);
  if (count === undefined) {
    if (fresh) return isPlural(title) ? `new ${title}` : newOne(title);
    return the(title);
  }
  if (count === 1) {
    const one = singular(title);
    if (fresh) return newOne(one);
    return the(one);
  }
  const many = `${numberWord(count)} ${fresh ? 'new ' : ''}${plural(title)}`;
  if (some === 'of more' && !fresh) return `${numberWord(count)} of the ${plural(title)}`;
  return fresh || some ? many : the(many);
}

/** `a new gasket`; what has no singular of its own is `new pliers`, what is no number of things `new wire`. */
function newOne(title: string): string {
  if (isPlural(title) || isMass(title)) return `new ${title}`;
  return `${article('new')} new ${title}`;
}

function positioned({ positions, fresh }: Noun, title: string, without: boolean): string {
  const many = positions.length > 1;
  const name = many ? plural(title) : singular(title);
  if (positions.every((one) => /^\d+$/.test(one))) {
    const { head, rest } = headAndRest(name);
    const numbered = `${head} ${numbers(positions)}${rest}`;
    if (!fresh) return numbered;
    return many
      ? `${numberWord(positions.length)} new ${name} (numbers ${numbers(positions)})`
      : `${newOne(name)} (number ${numbers(positions)})`;
  }
  const which = positions.map((one) => one.replaceAll('_', ' '));
  const listed = which.length < 2 ? which.join('') : `${which.slice(0, -1).join(', ')} and ${which.at(-1)}`;
  if (fresh) return many ? `new ${listed} ${name}` : `a new ${listed} ${name}`;
  return without ? `${listed} ${name}` : `the ${listed} ${name}`;
}

/** `3`, `1 and 3`, `1 to 4` */
function numbers(positions: readonly string[]): string {
  const values = positions.map(Number);
  const run =
    values.length > 2 && values.every((one, index) => index === 0 || one === values[index - 1]! + 1);
  if (run) return `${values[0]} to ${values.at(-1)}`;
  return values.length < 2 ? values.join('') : `${values.slice(0, -1).join(', ')} and ${values.at(-1)}`;
}

/** `M8×1.25`; nothing where the title says it already. */
function threadOf({ thread, title }: Noun): string | undefined {
  if (thread === undefined) return undefined;
  const size = thread.split(/[x×-]/)[0]!;
  return title.includes(size) ? undefined : thread.replace('x', '×');
}

/** With an article, or none where it is poured, smeared or cut off: `with grease`, `with the swab`. */
export function material(noun: Noun): Rich {
  return phrase(noun, { without: isMass(noun.title) || isPlural(noun.title) });
}

/** Bolts, screws, nuts and plugs are turned tight; pins, clips and keys are not. */
export function isTurned(noun: Noun | undefined): boolean {
  if (!noun) return false;
  if (noun.thread !== undefined) return true;
  return /(?:bolt|screw|stud|nut|plug|union|clamp)$/.test(
    headAndRest(singular(noun.title)).head.toLowerCase(),
  );
}

/** `it` or `them`. */
export function them(nouns: readonly Noun[]): string {
  return nouns.length > 1 || nouns.some(isMany) ? 'them' : 'it';
}

export function isAre(nouns: readonly Noun[]): string {
  return nouns.length > 1 || nouns.some(isMany) ? 'are' : 'is';
}
