/**
 * `npx tsx tests/mutation-score/score.ts [--count 200] [--seed 1] [--room FOLDER …] [--again FILE] [--patient]`: what
 * share of small changes of the code the tests notice. Draws a sample of all mutants of each room, runs the tests that come by
 * each, prints the score of each room and every survivor, and writes `.build/mutation-score.json`. `--again` tries
 * only what survived in such a file, after tests were added; `--tests` narrows the tests to folders and
 * files; `--patient` shows what survives the slower tests too.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { sourceFiles } from '../house/imports.ts';
import { bundle } from './bundle.ts';
import { Child } from './child.ts';
import { type Mutant, mutantsBelow, ROOT, sampled } from './mutants.ts';
import { type Trial, Trials } from './trials.ts';

const ROOMS = ['grammar', 'language-server/execution', 'language-server/checks'];
function inServer(room: string): string {
  return `tests/language-server/${room}`;
}

/** Tests that speak about behaviour and are quick; servers, browsers and whole programs are left out. */
const TESTS = [
  ...['tests/language', 'tests/demo', 'tests/grammar', 'tests/real', 'tests/oracle', 'tests/properties'],
  ...['checks', 'said', 'model', 'hazards', 'fastening', 'wording', 'rules', 'lists'].map(inServer),
  ...['report', 'engine', 'execution', 'config', 'compare', 'features'].map(inServer),
  'tests/mutation',
];
/** Whole files of them that take long: random jobs and large texts. */
const LONG =
  /agreement|for-all-cases|holds|long-texts|fastening-slips|\/properties\.test|trace|everywhere|limits|robust|long-jobs|rebuild|\/write-out|judged|mutation\/(mutation|mends|seeded|small)/;
const NAMES_GIVEN = /^import \{ ((describe|expect|it|test)(, )?)+ \} from 'vitest';$/m;
/** All that is written stands here. */
const KEPT = join(ROOT, '.build');
const DRY_MS = 1_800_000;

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1' },
    room: { type: 'string', multiple: true, default: ROOMS },
    again: { type: 'string' },
    patient: { type: 'boolean', default: false },
    tests: { type: 'string', multiple: true, default: TESTS },
  },
});

interface Kept {
  all: Record<string, number>;
  trials: Trial[];
}

const before = values.again && (JSON.parse(readFileSync(values.again, 'utf8')) as Kept);
const all: Record<string, number> = {};
const chosen: Mutant[] = [];
for (const room of values.room) {
  const mutants = await mutantsBelow(room, KEPT);
  all[room] = mutants.length;
  chosen.push(...sampled(mutants, Number(values.count), Number(values.seed)));
}
const settled = before ? before.trials.filter(({ outcome }) => !open(outcome)) : [];
const tried = before && new Set(before.trials.map(({ mutant }) => mutant.key));
const keys = new Set(settled.map(({ mutant }) => mutant.key));
// The rooms in turn, so that a run that is ended early has something of each.
const mutants = sampled(
  chosen.filter(({ key }) => !keys.has(key) && (!tried || tried.has(key))),
  chosen.length,
  Number(values.seed),
);

const folders = values.tests.filter((name) => !name.endsWith('.ts'));
const files = values.tests.filter((name) => name.endsWith('.ts'));
const tests = [...sourceFiles(ROOT, folders), ...files].filter(
  (name) =>
    name.endsWith('.test.ts') && !LONG.test(name) && NAMES_GIVEN.test(readFileSync(join(ROOT, name), 'utf8')),
);
const { path, ids } = await bundle(mutants, tests, join(KEPT, 'mutation-score.mjs'));
const child = new Child(path);
const dry = await child.ask({ ask: 'dry' }, DRY_MS);
if (typeof dry !== 'object' || dry.said !== 'dry') throw new Error(`the tests do not run: ${dry}`);
console.error(
  `${tests.length} files with ${dry.tests.length} tests, ${seconds(dry.tests.reduce((sum, { ms }) => sum + ms, 0))} s`,
);
for (const { name } of dry.tests.filter(({ failed }) => failed)) console.error(`left out: ${name}`);
for (const { name, ms } of dry.tests.toSorted((a, b) => b.ms - a.ms).slice(0, 5))
  console.error(`slow: ${name}, ${seconds(ms)} s`);

const trials: Trial[] = [...settled];
const run = new Trials(child, dry);
for (const [index, mutant] of mutants.entries()) {
  const trial = await run.of(mutant, ids.get(mutant)!);
  const late = values.patient && trial.outcome === 'survived';
  trials.push(late ? await run.patiently(mutant, ids.get(mutant)!) : trial);
  if (index % 20 === 0) {
    console.error(`${index} of ${mutants.length}`);
    keep();
  }
}
child.end();
keep();
for (const room of values.room) report(room);

function open(outcome: Trial['outcome']): boolean {
  return outcome === 'survived' || outcome === 'not covered';
}

function seconds(ms: number): string {
  return (ms / 1000).toFixed(1);
}

function keep(): void {
  const kept: Kept = { all, trials };
  writeFileSync(join(KEPT, 'mutation-score.json'), `${JSON.stringify(kept, null, 1)}\n`);
}

function report(room: string): void {
  const here = trials.filter(({ mutant }) => mutant.file.startsWith(`${room}/`));
  const tried = here.filter(({ outcome }) => outcome !== 'static');
  const lived = tried.filter(({ outcome }) => open(outcome));
  const share = (100 * (tried.length - lived.length)) / tried.length;
  console.log(
    `\n${room}: ${share.toFixed(1)} % of ${tried.length} noticed (${here.length} drawn of ${all[room]}, ${
      here.length - tried.length
    } only at loading left out; ${tried.filter(({ outcome }) => outcome === 'not covered').length} not come by${
      values.patient ? `; ${tried.filter(({ late }) => late).length} noticed by slower tests alone` : ''
    })`,
  );
  for (const { mutant, outcome } of lived.sort((a, b) => (a.mutant.key < b.mutant.key ? -1 : 1))) {
    const short = (text: string) => text.replaceAll(/\s+/g, ' ').slice(0, 100);
    console.log(
      `  ${mutant.file}:${mutant.line} ${outcome === 'survived' ? '' : '(not covered) '}${short(mutant.original)} => ${short(mutant.replacement)}`,
    );
  }
}
