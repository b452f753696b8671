/**
 * Telling a command from a statement: by the word that begins it. The verbs are those of the language and others that
 * technicians are told things with; where a word is a noun as well (`Oil at 80 °C burns`), what follows decides.
 * English. Common practice, no source.
 */
import { VERBS } from '../../grammar/tokens/verbs.ts';

/** First words of the language's verbs: `lock` of `lock out`. */
const TRADE: readonly string[] = VERBS.flatMap(({ verb, also }) => [verb, ...(also ?? [])]).map(
  (phrase) => phrase.split(' ')[0]!,
);

/** Commands of other verbs. */
const OTHERS =
  `add adjust advance aim allow always apply arrange ask assemble attach attempt avoid balance bend block
  blow break bring brush build call carry catch centre center change chock collect compare consult continue count cover
  crimp cut deflate degrease depress determine dip dismantle dispose do drill drive drop dry ease engage ensure enter
  erase examine exercise extend feed file fill fold follow force gauge get give go grasp grip guide hammer handle hang
  have heat help hold identify immerse insert jack keep knock label lay leave let level lift listen locate look lubricate
  make match mix move mount never note notify obey observe obtain only operate pack paint park pass peel place plug point
  polish position pour press prevent prime prise protect pry pull pump punch purge push put reach read rebuild
  recharge reduce refer refill release renew repair repeat replace report reset rest retract retighten retorque return
  reverse rinse roll rub scrape screw seat see seek select separate set shake shim shut slide sling smear solder soak
  spin splice spray squeeze stake stamp stand start stay step stop store straighten stretch strike strip swing tag take tap
  tell temper test thread throw tie tilt torque touch trace transfer treat trim try tuck twist undo unfold
  unhook unlatch unload unplug unscrew unwind update use ventilate verify vent wait walk warm warn wash watch wear weigh
  wind wipe withdraw work wrap write zero`.split(/\s+/);

const VERB_WORDS: ReadonlySet<string> = new Set([...TRADE, ...OTHERS]);

/** Words that are nouns or adjectives as often: a command only where its object follows. */
const NOUNS: ReadonlySet<string> = new Set(
  `oil grease drain cap support mark lock coat turn measure record check start open clean seal cover block
  brush cut dry drill drive drop file fill grip guide hammer handle heat help jack label lay level lift match
  mount note only pack paint park pass plug point press prime pump punch purge reach reset rest return reverse roll
  screw seat set shim shut slide sling spray stake stamp stand step stop store strike strip swing tag tap test
  thread throw tie torque touch trace transfer trim tuck twist use vent wait walk wash watch wear work wrap zero sign
  clear close live free fit level run wind warm position place report repair release charge change balance bend
  adhesive lower isolate mix force feed return`.split(/\s+/),
);

const OBJECT: ReadonlySet<string> = new Set(
  `the a an all both each every any it its their them these those this that one two three four new everything nothing
  anything`.split(/\s+/),
);

const NO_COMMAND: ReadonlySet<string> = new Set(
  'that which is are can may has was were must will should'.split(' '),
);

/** A clause that tells to do something, by its first words; `then`, `now` and manner words may stand before. */
export function isCommand(clause: string): boolean {
  const words = wordsOf(clause);
  let at = 0;
  while (at < words.length - 1 && (LEADS.has(words[at]!) || /[a-z]{3}ly$/.test(words[at]!))) at++;
  const first = words[at] ?? '';
  const next = words[at + 1] ?? '';
  if (first === 'do' && next === 'not') return true;
  if (SURE.has(first)) return true;
  if (!VERB_WORDS.has(first)) return false;
  if (NOUNS.has(first)) return OBJECT.has(next);
  return !NO_COMMAND.has(next);
}

const LEADS: ReadonlySet<string> = new Set(['then', 'now', 'next', 'first', 'finally', 'and', 'also']);
const SURE: ReadonlySet<string> = new Set(['never', 'always', 'ensure', 'keep', 'let', "don't"]);

/** The verb of a clause that is a command with an object of its own, else nothing. */
export function commandVerb(clause: string): string | undefined {
  const [first = '', next = '', third = ''] = firstWords(clause, 3);
  if (!VERB_WORDS.has(first)) return undefined;
  if (OBJECT.has(next)) return first;
  // `lift off the cover`, `switch on the pump`
  return PARTICLES.has(next) && OBJECT.has(third) ? first : undefined;
}

const PARTICLES: ReadonlySet<string> = new Set(
  'off on out in up down back aside away over to into onto for at from through'.split(' '),
);

/** A sentence that gives an instruction, at once or after a condition: `If it drips, renew the ring.` */
export function isInstruction(sentence: string): boolean {
  if (isCommand(sentence)) return true;
  const comma = sentence.indexOf(',');
  return comma > 0 && CONDITION.test(sentence) && isCommand(sentence.slice(comma + 1));
}

export const CONDITION =
  /^(if|when|where|before|after|until|unless|once|while|as soon as|with|on|in|for|at|from|to)\b/i;

const WORD = /[a-z]+(?:['’-][a-z]+)*/g;

function wordsOf(text: string): string[] {
  return text.toLowerCase().match(WORD) ?? [];
}

/** So many words at most, those left out that only lead on to a command: the rest of a sentence is not looked at. */
function firstWords(text: string, count: number): string[] {
  const words: string[] = [];
  const lower = text.toLowerCase();
  WORD.lastIndex = 0;
  while (words.length < count) {
    const word = WORD.exec(lower)?.[0];
    if (word === undefined) break;
    if (!LEADS.has(word)) words.push(word);
  }
  WORD.lastIndex = 0;
  return words;
}
