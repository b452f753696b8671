/**
 * `npm run bench`: a folder of 1,000 procedures of 200 steps, checked cold, with kept results, and after one change, on
 * one thread and on all; against xmllint with schema and Schematron on the same content, and against the floor of
 * starting a process and listing the files. Prints a table and writes it to `.build/bench-folder.md`.
 */
import { appendFileSync, mkdirSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { contentOf } from './content.ts';
import { inDowel } from './in-dowel.ts';
import { inXml, SCHEMATRON, XML_SCHEMA } from './in-xml.ts';
import { hasProgram, PEAK_HOOK, peakMemory, quantile, runProgram } from './measure.ts';

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const FOLDER = join(ROOT, '.build/bench-folder');
const DOWEL = join(ROOT, '.build/dowel.cjs');
const [count = 1000, rounds = 3] = process.argv.slice(2).map(Number);
const STEPS = 200;

rmSync(FOLDER, { recursive: true, force: true });
const jobs = join(FOLDER, 'jobs');
const xml = join(FOLDER, 'xml');
const cache = join(FOLDER, 'cache');
for (const folder of [jobs, xml]) mkdirSync(folder, { recursive: true });

const content = contentOf({ steps: STEPS });
const text = inDowel(content);
const start = text.indexOf('\nprocedure ');
const machine = text.slice(0, start);
const procedure = text.slice(start + 1);
const name = /^procedure (\S+)/.exec(procedure)![1]!;
// Ten machines, each in a file of its own, and a hundred jobs for each.
const machines = Math.max(1, Math.round(count / 100));
const machineName = /machine (\S+)/.exec(machine)![1]!;
for (let at = 0; at < machines; at++)
  writeFileSync(join(jobs, `machine-${at}.dowel`), machine.replace(machineName, `${machineName}-${at}`));
for (let at = 0; at < count; at++) {
  const own = procedure
    .replace(name, `${name}-${at}`)
    .replace(new RegExp(`for ${machineName}\\b`), `for ${machineName}-${at % machines}`);
  writeFileSync(join(jobs, `job-${at}.dowel`), `use "machine-${at % machines}.dowel"\n\n${own}`);
}
const xmlText = inXml(content);
for (let at = 0; at < count; at++) writeFileSync(join(xml, `job-${at}.xml`), `${xmlText}<!-- ${at} -->\n`);
writeFileSync(join(FOLDER, 'schema.xsd'), XML_SCHEMA);
writeFileSync(join(FOLDER, 'rules.sch'), SCHEMATRON);

const node = process.execPath;
const check = (...more: string[]) => runProgram(node, [DOWEL, 'check', jobs, ...more]);
const lint = (...schema: string[]) =>
  runProgram('xmllint', ['--noout', ...schema, ...readdirSync(xml).map((file) => join(xml, file))]);
const list = `const fs=require('node:fs');for(const f of fs.readdirSync(${JSON.stringify(jobs)}))fs.statSync(${JSON.stringify(`${jobs}/`)}+f)`;
let changes = 0;

const programs: [string, () => void, (() => void)?][] = [
  ['floor', () => runProgram(node, ['-e', list])],
  ['cold, one thread', () => check('--workers', '1')],
  ['cold, all cores', () => check()],
  ['kept, nothing changed', () => check('--cache', cache)],
  [
    'kept, one job changed',
    () => check('--cache', cache),
    () => appendFileSync(join(jobs, 'job-7.dowel'), `// change ${++changes}\n`),
  ],
];
if (hasProgram('xmllint')) {
  programs.push(['xmllint, schema', () => lint('--schema', join(FOLDER, 'schema.xsd'))]);
  programs.push(['xmllint, Schematron', () => lint('--schematron', join(FOLDER, 'rules.sch'))]);
}
check('--cache', cache);
// Kept stamps are trusted when they are older than two seconds.
const written = statSync(join(cache, 'results')).mtimeMs;
while (Date.now() < written + 2500) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 100);
check('--cache', cache);

const times = new Map<string, number[]>(programs.map(([program]) => [program, []]));
for (let round = 0; round < rounds; round++) {
  for (const [program, run, before] of programs) {
    before?.();
    const began = performance.now();
    run();
    times.get(program)!.push(performance.now() - began);
  }
  process.stderr.write(`round ${round + 1} of ${rounds}\n`);
}
const ms = (program: string) => quantile(times.get(program) ?? [], 0.5);
const floor = ms('floor');
const peers = ['xmllint, schema', 'xmllint, Schematron'].filter((peer) => times.has(peer));
const both = peers.length === 2 ? peers.reduce((sum, peer) => sum + ms(peer), 0) : undefined;
const hook = join(FOLDER, 'peak.cjs');
writeFileSync(hook, PEAK_HOOK);
const rows = programs.map(([program]) => [
  program,
  Math.round(ms(program)).toLocaleString('en'),
  (ms(program) / floor).toFixed(1),
  both === undefined ? 'left out' : (ms(program) / both).toFixed(2),
]);
const report = [
  `Measured ${new Date().toISOString().slice(0, 10)} with Node ${process.version} on ${cpus().length} cores (shared): ${count.toLocaleString('en')} procedures of ${STEPS} steps, medians of ${rounds}.`,
  '',
  '| | ms | against start and listing | against xmllint with schema and Schematron |',
  '|---|---|---|---|',
  ...rows.map((row) => `| ${row.join(' | ')} |`),
  '',
  `Peak memory, one thread: ${Math.round(peakMemory(hook, [DOWEL, 'check', jobs, '--workers', '1']))} MB. Aims: cold at most 0.5 of xmllint; after one change at most 1.5 of start and listing.`,
  '',
].join('\n');
writeFileSync(join(ROOT, '.build/bench-folder.md'), report);
process.stdout.write(report);
