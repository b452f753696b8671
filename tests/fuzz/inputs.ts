/** Texts by chance, of four kinds and two sizes; the seed alone says which. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Random } from './random.ts';
import { sentence } from './sentences.ts';

const EVERYDAY = fileURLToPath(new URL('../everyday', import.meta.url));
/** Whole jobs with their machines, small enough to be checked in a few milliseconds. */
export const SAMPLES: readonly string[] = readdirSync(EVERYDAY)
  .filter((name) => name.endsWith('.dowel'))
  .sort()
  .map((name) => readFileSync(join(EVERYDAY, name), 'utf8'));

export const KINDS = ['changed', 'derived', 'spliced', 'characters'] as const;
export type InputKind = (typeof KINDS)[number];

/** Of so many texts one is a whole job; the others are thinned out, so that a million are done in an hour. */
const WHOLE_EVERY = 40;

export function input(seed: number): { kind: InputKind; text: string } {
  const random = new Random(seed);
  const kind = KINDS[seed % KINDS.length]!;
  const whole = Math.floor(seed / KINDS.length) % WHOLE_EVERY === 0;
  const sample = () => (whole ? random.of(SAMPLES) : thinned(random, random.of(SAMPLES)));
  switch (kind) {
    case 'changed':
      return { kind, text: changed(random, sample()) };
    case 'derived':
      return { kind, text: sentence(random, whole ? 240 : 40) };
    case 'spliced':
      return { kind, text: spliced(random, sample()) };
    case 'characters':
      return { kind, text: characters(random, whole ? 200 : 40) };
  }
}

/** A sample with its blocks, but only some four of the lines within them. */
function thinned(random: Random, sample: string): string {
  const lines = sample.split('\n');
  return lines.filter((line) => /[{}]\s*$/.test(line) || random.below(lines.length) < 4).join('\n');
}

const PIECES = [
  '{',
  '}',
  '"',
  '#',
  '..',
  '//',
  '±',
  '-',
  ' ',
  '\n',
  '0',
  '1e9',
  'x9999',
  'é',
  '\u0000',
  '\ud800',
  'when',
  'reverse',
  'any',
];

/** A sample with characters and lines lost, doubled, put in. */
function changed(random: Random, sample: string): string {
  let text = sample;
  for (let times = 1 + random.below(5); times > 0; times--) {
    const at = random.below(text.length + 1);
    const length = random.below(30);
    switch (random.below(4)) {
      case 0:
        text = text.slice(0, at) + text.slice(at + length);
        break;
      case 1:
        text = text.slice(0, at + length) + text.slice(at);
        break;
      case 2:
        text = text.slice(0, at) + random.of(PIECES) + text.slice(at);
        break;
      default: {
        const lines = text.split('\n');
        const line = lines.splice(random.below(lines.length), 1);
        lines.splice(random.below(lines.length + 1), 0, ...line);
        text = lines.join('\n');
      }
    }
  }
  return text;
}

/** Lines of several samples, and derived lines, in one text. */
function spliced(random: Random, sample: string): string {
  const lines = sample.split('\n');
  for (let times = 1 + random.below(6); times > 0; times--) {
    const other = random.below(3) === 0 ? sentence(random, 30) : random.of(SAMPLES);
    const from = other.split('\n');
    const start = random.below(from.length);
    lines.splice(
      random.below(lines.length + 1),
      random.below(2),
      ...from.slice(start, start + 1 + random.below(5)),
    );
  }
  return lines.join('\n');
}

/** Characters of all kinds, and of the kinds that the language knows more often. */
function characters(random: Random, most: number): string {
  const out: string[] = [];
  for (let length = random.below(most); length > 0; length--) {
    const kind = random.below(6);
    out.push(
      kind === 0
        ? String.fromCharCode(random.below(0x10000))
        : kind < 3
          ? random.of(PIECES)
          : String.fromCharCode(32 + random.below(95)),
    );
  }
  return out.join('');
}
