/**
 * `dowel fastener M10x1.5 class 10.9 torque 45 N·m`: the sheet of one fastener, from words in the order in which a
 * machine file has them. Reads no file.
 */
import { printReader, readQuantity, typedNumber } from '../../grammar/quantity/index.ts';
import { type Band, type FastenerFacts, fastenerSheet, sheetText } from '../fastening/index.ts';
import { bandIn } from '../model/fastening-amounts.ts';
import { complain, type ExitCode, print } from './output.ts';

export function fastener(words: readonly string[]): ExitCode {
  const read = readFacts(words);
  if ('complaint' in read) {
    complain(read.complaint);
    return 2;
  }
  const sheet = fastenerSheet(read.facts);
  // A sheet about a thread or class that is not understood would be all "unknown".
  const needed = read.facts.strengthClass === undefined ? [sheet.thread] : [sheet.thread, sheet.strength];
  for (const value of needed) {
    if (value.known) continue;
    const { message, remedy } = value.problem;
    complain(remedy === undefined ? message : `${message} ${remedy}`);
    return 2;
  }
  print(sheetText(sheet).trimEnd());
  return 0;
}

/** What each word takes, for the complaint about one that stands alone. */
const TAKES = {
  thread: 'a thread: thread M10x1.5',
  class: 'a property class: class 10.9',
  grade: 'a grade: grade 5',
  torque: 'a torque with its unit: torque 45 N·m',
  k: 'the nut factor: K 0.15',
  condition: 'words for the surface: condition zinc plated',
  angle: 'an angle: angle 90°',
  name: 'words: name head bolts',
  wrench: 'the length of the torque wrench, drive to grip: wrench 400 mm',
  adapter: 'the length of the adapter, drive to nut: adapter 60 mm',
} as const;

type Word = keyof typeof TAKES;

/** Words that take any others. */
const TAKES_WORDS: ReadonlySet<Word> = new Set(['condition', 'name']);

interface Complaint {
  readonly complaint: string;
}

/** The facts that the words give, or what is wrong with them. */
export function readFacts(words: readonly string[]): { readonly facts: FastenerFacts } | Complaint {
  const given = new Map<Word, string>();
  let current: Word = 'thread';
  let values: string[] = [];
  const close = (): Complaint | undefined => {
    const value = values.join(' ');
    values = [];
    if (value === '' && current === 'thread' && !given.has('thread')) return undefined;
    if (value === '') return { complaint: `After ${shown(current)} comes ${TAKES[current]}.` };
    if (given.has(current)) return { complaint: `${shown(current)} is given twice. Give it once.` };
    const near = TAKES_WORDS.has(current) ? undefined : nearWord(value);
    if (near)
      return {
        complaint: `${shown(current)} ${value} cannot be read. Did you mean the word ${shown(near)}?`,
      };
    given.set(current, value);
    return undefined;
  };
  for (const word of words.flatMap((each) => each.split(/\s+/))) {
    if (word === '') continue;
    if (/^--?[a-z]/i.test(word))
      return { complaint: `There is no option ${word}. dowel fastener --help tells what there is.` };
    const next = wordOf(word);
    if (next === undefined) {
      values.push(word);
      continue;
    }
    const complaint = close();
    if (complaint) return complaint;
    current = next;
  }
  return close() ?? factsOf(given);
}

function factsOf(given: ReadonlyMap<Word, string>): { readonly facts: FastenerFacts } | Complaint {
  const thread = given.get('thread');
  if (thread === undefined)
    return {
      complaint: 'No thread is given. Begin with one: dowel fastener M10x1.5 class 10.9 torque 45 N·m.',
    };
  const grade = given.get('grade');
  const classOf = given.get('class');
  if (grade !== undefined && classOf !== undefined)
    return { complaint: 'A class and a grade are given. Give the one that the bolt shows.' };
  const strengthClass = classOf ?? (grade === undefined ? undefined : `grade ${grade}`);
  const torque = amount(given.get('torque'), 'torque', 'N·m');
  const angle = amount(given.get('angle'), 'angle', '°');
  const k = nutFactor(given.get('k'));
  const wrench = amount(given.get('wrench'), 'wrench', 'm');
  const adapter = amount(given.get('adapter'), 'adapter', 'm');
  if (adapter && !wrench)
    return { complaint: 'An adapter is given, and no wrench. Give its length, too: wrench 400 mm.' };
  for (const one of [torque, angle, k, wrench, adapter]) if (one && 'complaint' in one) return one;
  const name = given.get('name');
  const condition = given.get('condition');
  return {
    facts: {
      thread,
      ...(name === undefined ? {} : { name }),
      ...(strengthClass === undefined ? {} : { strengthClass }),
      ...(torque && 'low' in torque ? { torque } : {}),
      ...(k && 'low' in k ? { nutFactor: k } : {}),
      ...(condition === undefined ? {} : { condition }),
      ...(angle && 'low' in angle ? { angle: angle.high } : {}),
      ...(wrench && 'low' in wrench && adapter && 'low' in adapter
        ? { adapter: { wrenchLength: wrench.low, adapterLength: adapter.low } }
        : {}),
    },
  };
}

/** One quantity as a band in the unit named. */
function amount(
  text: string | undefined,
  word: 'torque' | 'angle' | 'wrench' | 'adapter',
  unit: string,
): Band | Complaint | undefined {
  if (text === undefined) return undefined;
  const kindOf = word === 'torque' || word === 'angle' ? word : 'length';
  if (typedNumber(text)) {
    const units = { torque: ['N·m', 'lbf·ft'], angle: ['°', 'turn'], length: ['mm', 'in'] }[kindOf];
    const written = units.map((each) => `${text} ${each}`.replace(' °', '°'));
    return { complaint: `The ${word} ${text} has no unit. Write ${written.join(' or ')}.` };
  }
  const outcome = readQuantity(text);
  if (!outcome.ok) {
    const { message, proposals } = outcome.problem;
    const meant = proposals.some((each) => !message.includes(each))
      ? ` Did you mean ${proposals.join(' or ')}?`
      : '';
    return { complaint: `The ${word} ${text} cannot be read. ${message}${meant}` };
  }
  const { kind } = outcome.value.unit;
  if (kind !== kindOf) {
    const is = kind === 'number' ? 'a number' : `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind}`;
    return { complaint: `${printReader(outcome.value)} is ${is}. After ${word} comes ${TAKES[word]}.` };
  }
  const band = bandIn(outcome.value, unit);
  const end = Number.isFinite(band.high) ? band.high : band.low;
  if (!(end > 0)) return { complaint: `The ${word} ${text} is not above zero. Give a value above zero.` };
  if (word === 'angle' && !Number.isFinite(band.high))
    return { complaint: `The angle ${text} has no upper end. Give one value, such as 90°.` };
  return band;
}

/** K is a plain number, or a range of two. */
function nutFactor(text: string | undefined): Band | Complaint | undefined {
  if (text === undefined) return undefined;
  const numbers = text.split('..').map((each) => (/^\d*\.?\d+$/.test(each) ? Number(each) : Number.NaN));
  const [low = Number.NaN, high = low] = numbers;
  if (numbers.length <= 2 && low > 0 && high >= low && high < 1) return { low, high };
  return { complaint: `K ${text} is no nut factor. Write a number between 0 and 1: K 0.15 or K 0.12..0.18.` };
}

/** What a word that nothing here has was perhaps meant as: `torq` is torque. */
function nearWord(value: string): Word | undefined {
  for (const piece of value.toLowerCase().split(' ')) {
    if (!/^[a-z]{3,}$/.test(piece)) continue;
    const near = (Object.keys(TAKES) as Word[]).find((word) => word.startsWith(piece.slice(0, 3)));
    if (near) return near;
  }
  return undefined;
}

function wordOf(typed: string): Word | undefined {
  const word = typed.toLowerCase();
  return Object.hasOwn(TAKES, word) ? (word as Word) : undefined;
}

function shown(word: Word): string {
  return word === 'k' ? 'K' : word;
}
