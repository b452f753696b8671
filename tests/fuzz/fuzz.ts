/**
 * `npm run fuzz [COUNT] [FIRST]`: a million texts by chance (seeds FIRST and up), each with what must hold for every
 * text. Says the seed of each that breaks something or takes over two seconds, and ends with 1 if there was one.
 */
import { broken } from './broken.ts';
import { input, KINDS } from './inputs.ts';

const LIMIT_MS = 2000;
const FEATURES_EVERY = 5;
const [count = 1_000_000, first = 1] = process.argv.slice(2).map(Number);
const times = new Map<string, number>(KINDS.map((kind) => [kind, 0]));
let slowest = { ms: 0, seed: 0 };
let bad = 0;
const began = performance.now();
for (let seed = first; seed < first + count; seed++) {
  const { kind, text } = input(seed);
  const start = performance.now();
  const wrong = broken(text, seed % FEATURES_EVERY === 0);
  let ms = performance.now() - start;
  // Other work on the machine is no fault of the text: what took long is done again by the clock of the processor.
  if (ms > LIMIT_MS) {
    const before = process.cpuUsage();
    broken(text, seed % FEATURES_EVERY === 0);
    const used = process.cpuUsage(before);
    ms = (used.user + used.system) / 1000;
  }
  times.set(kind, times.get(kind)! + ms);
  if (ms > slowest.ms) slowest = { ms, seed };
  if (wrong !== undefined || ms > LIMIT_MS) {
    bad++;
    console.log(`seed ${seed} (${kind}): ${wrong ?? `${ms.toFixed(0)} ms`}\n`);
  }
  const done = seed - first + 1;
  if (done % 20_000 === 0)
    console.error(`${done} of ${count}, ${((performance.now() - began) / 1000).toFixed(0)} s`);
}
console.log(
  `${count} texts from seed ${first}: ${bad} broken; slowest ${slowest.ms.toFixed(0)} ms (seed ${slowest.seed})`,
);
for (const [kind, ms] of times) console.log(`  ${kind}: ${((ms / count) * KINDS.length).toFixed(2)} ms each`);
process.exitCode = bad > 0 ? 1 : 0;
