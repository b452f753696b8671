/** Slips of English that a program makes when it puts sentences together. Common practice, no source. */

const NUMBERS = 'two|three|four|five|six|seven|eight|nine|ten|eleven|twelve';

const SLIPS: readonly (readonly [string, (sentence: string) => boolean])[] = [
  ['lower case', (one) => /^[a-z]/.test(one)],
  ['no full stop', (one) => !/[.!?:]["”’)]?$/.test(one)],
  ['two spaces', (one) => /\s\s/.test(one)],
  ['word twice', (one) => /\b([a-z]+) \1\b/i.test(one)],
  [
    'one of many',
    (one) =>
      /(?<![\d.])\b(?:1|one) (?:new )?[a-z]+s\b/i.test(one.replace(/one series|one (?:is|has|was)/gi, '')) &&
      !/\b1 (?:turns?|s)\b/.test(one),
  ],
  ['article', (one) => articleWrong(one)],
  ['many of one', manyOfOne],
  ['nothing there', (one) => /\b(?:the|a|an|with|of|to|for|and|at|that hold|between)\s*[.,;:]/i.test(one)],
  ['article behind new', (one) => /\bnew (?:the|a|an)\b/i.test(one)],
  ['place not filled', (one) => /[{}]/.test(one)],
  ['space before a mark', (one) => /\s[.,;:]/.test(one)],
  ['two full stops', (one) => /\.\./.test(one)],
  ['two articles', (one) => /\b(?:the|an?) (?:the|an?)\b/i.test(one)],
  ['undefined', (one) => /undefined|null|NaN|\[object/.test(one)],
];

/** What is wrong with a sentence; empty where nothing is. */
export function slipsIn(sentence: string): string[] {
  return SLIPS.flatMap(([name, wrong]) => (wrong(sentence) ? [name] : []));
}

/** `a O-ring`, `an cover`; letters said one by one and `unit`, `hour` are told apart. */
function articleWrong(sentence: string): boolean {
  for (const [, which, word] of sentence.matchAll(/\b(an?) ([\p{L}\d-]+)/giu)) {
    const vowel =
      /^(?:[AEFHILMNORSX](?:\d|-|$)|8|11\b|18\b|hour|honest|[aeiou](?!ne\b|ni(?!m|n)|se|s[eu]))/.test(
        word!,
      ) || /^[AEIOU][a-z]/.test(word!);
    if (vowel !== (which!.toLowerCase() === 'an')) return true;
  }
  return false;
}

/** `two`, then words up to a mark or a small word: the last of them must be a plural. */
function manyOfOne(sentence: string): boolean {
  const at = new RegExp(`\\b(?:${NUMBERS}) (?:new )?([\\w -]+?)(?= (?:${SMALL})\\b|[.,(;:])`, 'gi');
  return [...sentence.matchAll(at)].some(([, words]) => {
    const last = words!.trim().split(' ').at(-1)!;
    return !/s$|^(?:feet|teeth|people|times|new)$/.test(last);
  });
}

const SMALL =
  'that|and|to|with|by|in|for|from|away|cool|aside|back|of|through|at|until|while|on|are|is|into|under|as|then|over|out|down|still|apart';
