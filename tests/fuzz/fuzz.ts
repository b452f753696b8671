/**
 * `npm run fuzz [COUNT] [FIRST]`: a million texts by chance (seeds FIRST and up), each with what must hold for every
 * text; and for every 500 of them one session of an editor and one text that is published. Says the seed of each that
 * breaks something or takes over two seconds, and ends with 1 if there was one.
 */

import { broken } from './broken.ts';
import { publishing } from './broken-publishing.ts';
import { session } from './broken-session.ts';
import { input, KINDS } from './inputs.ts';
import { published } from './markup.ts';

const LIMIT_MS = 2000;
const FEATURES_EVERY = 20;
const LONGER_EVERY = 500;

const [count = 1_000_000, first = 1] = process.argv.slice(2).map(Number);
const times = new Map<string, { count: number; ms: number }>();
let slowest = { ms: 0, seed: 0 };
let bad = 0;
const began = performance.now();

const tries: Record<string, (seed: number) => string | undefined | Promise<string | undefined>> = {
  texts: (seed) => broken(input(seed).text, seed % FEATURES_EVERY === 0),
  sessions: (seed) => session(seed),
  published: async (seed) => (await publishing(published(seed))).wrong,
};

/** `limit`: many questions one after the other may take longer than one text. */
async function tried(what: string, kind: string, seed: number, limit: number): Promise<void> {
  const start = performance.now();
  const wrong = await tries[what]!(seed);
  let ms = performance.now() - start;
  // Other work on the machine is no fault of the text: what took long is done again by the clock of the processor.
  if (ms > limit) {
    const before = process.cpuUsage();
    await tries[what]!(seed);
    const used = process.cpuUsage(before);
    ms = (used.user + used.system) / 1000;
  }
  const sum = times.get(kind) ?? { count: 0, ms: 0 };
  times.set(kind, { count: sum.count + 1, ms: sum.ms + ms });
  if (what === 'texts' && ms > slowest.ms) slowest = { ms, seed };
  if (wrong !== undefined || ms > limit) {
    bad++;
    console.log(`${what}, seed ${seed} (${kind}): ${wrong ?? `${ms.toFixed(0)} ms`}\n`);
  }
}

for (let seed = first; seed < first + count; seed++) {
  await tried('texts', KINDS[seed % KINDS.length]!, seed, LIMIT_MS);
  if (seed % LONGER_EVERY === 0) {
    await tried('sessions', 'sessions', seed, 10 * LIMIT_MS);
    await tried('published', 'published', seed, LIMIT_MS);
  }
  const done = seed - first + 1;
  if (done % 20_000 === 0)
    console.error(`${done} of ${count}, ${((performance.now() - began) / 1000).toFixed(0)} s`);
}
console.log(
  `${count} texts from seed ${first}: ${bad} broken; slowest ${slowest.ms.toFixed(0)} ms (seed ${slowest.seed})`,
);
for (const [kind, sum] of times)
  console.log(`  ${kind}: ${sum.count}, ${(sum.ms / sum.count).toFixed(2)} ms each`);
process.exitCode = bad > 0 ? 1 : 0;
