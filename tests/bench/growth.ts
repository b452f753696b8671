/**
 * `npm run bench`, second part: how the time and memory of a whole check grow with the number of axes that a
 * job's cases are told apart by. Prints a table and writes it to `.build/growth.md`. Everything is set against
 * the same steps without any axis, that is, against one case.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type CheckResult, checkProject } from '../../language-server/checks/check-project.ts';
import { memoryHost } from '../../language-server/project/project.ts';
import { growthJob, type Load } from './growth-jobs.ts';
import { given, interleaved, type Measured, PEAK_HOOK, peakMemory } from './measure.ts';

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const FOLDER = join(ROOT, '.build/bench');
const DOWEL = join(ROOT, '.build/dowel.cjs');
const STEPS = [500, 5_000];
const AXES = [1, 5, 10, 20, 30];
/** Four axes that meet have to be four. */
const MEETING_AXES = AXES.filter((axes) => axes >= 4);
const HOSTILE_AXES = [10, 20, 30];

interface Row {
  axes: number;
  time: Measured;
  /** Peak of the whole process against that of the single case. */
  memory: number;
  result: CheckResult;
}

mkdirSync(FOLDER, { recursive: true });
const hook = join(FOLDER, 'peak.cjs');
writeFileSync(hook, PEAK_HOOK);
const report = [
  ...table('Every axis governs its own things', 'apart', AXES, 'whole check at 20: 1.3; at 30: 1.5'),
  ...table('Four axes meet on each thing', 'meeting', MEETING_AXES, 'at 20: 3'),
  ...hostile(),
].join('\n');
writeFileSync(join(ROOT, '.build/growth.md'), report);
process.stdout.write(report);

function table(title: string, load: Load, axes: readonly number[], most: string): string[] {
  const all = STEPS.map((steps) => measure(load, steps, axes));
  const line = (name: string, value: (row: Row) => string) =>
    STEPS.map(
      (steps, index) =>
        `| ${[`${steps.toLocaleString('en')} steps: ${name}`, ...all[index]!.map(value)].join(' | ')} |`,
    );
  return [
    `${title}: CPU time of a whole check and peak memory of a whole process, against one case (at most: ${most}).`,
    'Medians of runs in turn; quartiles in brackets.',
    '',
    `| axes | ${axes.join(' | ')} |`,
    `|${'---|'.repeat(axes.length + 1)}`,
    ...line('time', ({ time }) => `${ratio(time.ratio)} (${ratio(time.low)} to ${ratio(time.high)})`),
    ...line('memory', ({ memory }) => ratio(memory)),
    '',
    '',
  ];
}

function measure(load: Load, steps: number, axes: readonly number[]): Row[] {
  process.stderr.write(`${load}, ${steps} steps …\n`);
  const jobs = [0, ...axes].map((count) => checkOf(load, steps, count));
  const times = interleaved(
    jobs.map(({ name, check }) => [name, check] as const),
    steps > 1000 ? { rounds: 15, warmUp: 4, clock: given } : { rounds: 60, warmUp: 30, clock: given },
  );
  const one = jobs[0]!.memory();
  return axes.map((count, index) => {
    const { name, check, memory } = jobs[index + 1]!;
    const result = check();
    // What is compared is the work of telling cases apart, not of telling findings.
    if (result.findings.length > 0) throw new Error(`${name}: ${result.findings[0]!.message}`);
    return { axes: count, time: times[name]!, memory: memory() / one, result };
  });
}

function checkOf(load: Load, steps: number, axes: number) {
  const name = `${load}-${steps}-${axes}`;
  const text = growthJob({ load, steps, axes });
  const path = join(FOLDER, `${name}.dowel`);
  writeFileSync(path, text);
  const host = memoryHost({ 'bench.dowel': text });
  return {
    name,
    check: () => checkProject(host, ['bench.dowel']),
    memory: () => peakMemory(hook, [DOWEL, 'check', path]),
  };
}

/** Where no way of telling cases apart is good enough: it has to stop soon and say for what. */
function hostile(): string[] {
  const lines = STEPS.flatMap((steps) =>
    HOSTILE_AXES.map((axes) => {
      const { name, check, memory } = checkOf('hostile', steps, axes);
      const { [name]: time } = interleaved([[name, check]], { rounds: 5, warmUp: 2, clock: given });
      const { findings } = check();
      const undecided = findings.filter((finding) => finding.check === 'undecided').length;
      return `| ${[steps.toLocaleString('en'), axes, Math.round(time!.ms), Math.round(memory()), undecided, findings.length - undecided].join(' | ')} |`;
    }),
  );
  return [
    'Random conditions over all axes on 50 things (at most: 1,000 ms).',
    '',
    '| steps | axes | CPU time, ms | peak memory, MB | things undecided | other findings |',
    '|---|---|---|---|---|---|',
    ...lines,
    '',
  ];
}

function ratio(value: number): string {
  return value.toFixed(2);
}
