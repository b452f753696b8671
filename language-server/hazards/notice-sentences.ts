/**
 * What the sentence of a notice says: whether it tells what happens and how to avoid it, and the instructions in it.
 * English, by the first words of its sentences; a reader judges better, so findings from here are quiet.
 *
 * Sources: the three parts (hazard, consequence, avoidance) ANSI Z535.6, IEC/IEEE 82079-1; a command or a condition
 * first ASD-STE100 rules 7.2 and 7.3, notes never instruct rule 5.5 (numbers as in issue 9, seen second hand). The
 * lists of words are common practice, no source.
 */

export interface NoticeParts {
  /** What it does to people or things. */
  readonly consequence: boolean;
  /** What to do, or not to do, about it. */
  readonly avoidance: boolean;
}

export function noticeParts(sentence: string, verbs: ReadonlySet<string>): NoticeParts {
  let consequence = HARM.test(sentence);
  let avoidance = MUST.test(sentence);
  for (const one of sentencesOf(sentence)) {
    if (clausesOf(one).some((clause) => isCommand(clause, verbs))) avoidance = true;
    else consequence = true;
  }
  return { consequence, avoidance };
}

/** A clause that tells to do something: the verb as the language has it, and the words after it. */
export interface Instruction {
  readonly verb: string;
  readonly rest: string;
}

/**
 * The instructions of a text. `verbs` maps how a verb is written to the verb of the language. A verb counts where
 * it begins a clause and an article, `new` or one of `names` follows: `Oil at 80 °C burns` is none.
 */
export function instructionsIn(
  sentence: string,
  verbs: ReadonlyMap<string, string>,
  startsWithName: (rest: string) => boolean,
): Instruction[] {
  const found: Instruction[] = [];
  for (const one of sentencesOf(sentence)) {
    for (const clause of clausesOf(one)) {
      const read = readVerb(clause, verbs);
      if (!read) continue;
      const rest = read.rest.trim();
      if (/^(the|a|an|all|both|each|every|any|its|their|new)\b/i.test(rest) || startsWithName(rest))
        found.push({ verb: read.verb, rest });
    }
  }
  return found;
}

function readVerb(clause: string, verbs: ReadonlyMap<string, string>): Instruction | undefined {
  const words = clause.toLowerCase().match(/^[a-z]+( [a-z]+)?/)?.[0];
  if (words === undefined) return undefined;
  for (const phrase of [words, words.split(' ')[0]!]) {
    const verb = verbs.get(phrase);
    if (verb !== undefined) return { verb, rest: clause.slice(phrase.length) };
  }
  return undefined;
}

function sentencesOf(text: string): string[] {
  return text
    .split(/(?<=[.!?;])\s+/)
    .map((one) => one.trim())
    .filter((one) => /[a-z]/i.test(one));
}

/** The sentence, and what stands after a comma, a colon or `and` in it: `Before you open it, let it cool.` */
function clausesOf(sentence: string): string[] {
  const pieces = sentence.split(/[,:]\s+|\s(?:and|then|or)\s+/i).map((piece) => piece.trim());
  return pieces.filter((piece) => piece !== '');
}

function isCommand(clause: string, verbs: ReadonlySet<string>): boolean {
  const [first = '', next = ''] = clause.toLowerCase().match(/[a-z]+/g) ?? [];
  if (COMMANDS.has(first)) return true;
  if (!verbs.has(first)) return false;
  // `Oil at 80 °C burns`, `Drain water is hot`: words that are nouns as well.
  return NOUNS.has(first) ? ARTICLES.has(next) : !NO_OBJECT.has(next);
}

const NOUNS: ReadonlySet<string> = new Set(
  'oil grease drain cap support mark lock coat turn measure record check start open clean seal'.split(' '),
);
const ARTICLES: ReadonlySet<string> = new Set(
  'the a an all both each every any it its their them new'.split(' '),
);
const NO_OBJECT: ReadonlySet<string> = new Set(
  'at in on of from under over with that which is are can may has'.split(' '),
);

const COMMANDS: ReadonlySet<string> = new Set(
  `always allow ask avoid beware block call catch chock cover do ease ensure follow get give go handle have hold
  keep leave let lift listen look make move never obey only protect pull push put read refer see seek set sling
  stand start stay step stop store take tell touch treat use ventilate walk warn wash watch wear work`.split(
    /\s+/,
  ),
);

const MUST = /\b(must|shall|should|may not|need to|needs to|has to|have to|is not to|are not to)\b/i;

const HARM =
  /\b(kill|burn|injur|crush|cut|maim|damag|break|harm|hurt|shock|explo|ignit|blind|poison|suffocat|chok|throw|thrown|fly|flies|pull|trap|tear|scald|sting|irritat|death|die|lethal|fatal|wound|amputat|deaf|burst|fail|snap|strik|electrocut|corro|contaminat|spoil|ruin|crack|scratch|distort|bend|warp|seiz)\w*/i;
