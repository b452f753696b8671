/**
 * Checks many files with what the machine has: results that are known from an earlier run are taken, the rest is shared
 * out between the cores where there is enough of it. What comes out never depends on either: each file is checked for
 * itself, and what only all together show is worked out from their results.
 */
import { availableParallelism } from 'node:os';
import type { FileChecked } from '../checks/together.ts';
import type { ResultCache } from './cache.ts';
import type { Disk } from './disk.ts';
import type { HouseOptions, Houses } from './houses.ts';
import { prepareFor } from './long-work.ts';
import type { Progress } from './progress.ts';
import { isFinished, withTimeLimit } from './time-limit.ts';

/** Below so many files the start of another thread costs more than it saves (measured: see DEVELOPERS.md). */
export const FILES_PER_WORKER = 80;
/** Files that lie together often use the same machine: they are shared out in runs. */
const RUN = 8;

export interface CheckHow {
  /** Where the files' houses come from, and the options that a worker needs to find the same. */
  houses: Houses;
  options: HouseOptions;
  cache?: ResultCache;
  /** How many threads at most; without it, as many as there are cores. */
  workers?: number;
  /** Seconds for one file at most. */
  timeLimit?: number;
  progress?: Progress;
}

/** What a worker is told. */
export interface Order {
  files: readonly string[];
  options: HouseOptions;
  timeLimit: number | undefined;
  /** The next file that nobody has taken yet, how many are done, and how many threads have loaded what they need. */
  counters: SharedArrayBuffer;
}

/** Results in the order of the files. */
export async function checkFiles(
  texts: Disk,
  files: readonly string[],
  { houses, options, cache, workers = availableParallelism(), timeLimit, progress }: CheckHow,
): Promise<FileChecked[]> {
  const written = new Map<object, string>();
  const houseOf = (file: string) => {
    const config = houses.configOf(file);
    const known = written.get(config) ?? JSON.stringify(config);
    written.set(config, known);
    return known;
  };
  const results = new Map<string, FileChecked>();
  for (const file of files) {
    const known = cache?.result(file, houseOf(file)) as FileChecked | undefined;
    if (known) results.set(file, known);
  }
  const left = files.filter((file) => !results.has(file));
  if (left.length === 0) return files.map((file) => results.get(file)!);
  const { eachChecker } = await import('../checks/check-project.ts');
  const threads = Math.min(workers, Math.ceil(left.length / FILES_PER_WORKER));
  const order: Order = {
    files: left,
    options: { config: options.config, convention: options.convention },
    timeLimit,
    counters: new SharedArrayBuffer(12),
  };
  const others = threads > 1 ? await inWorkers(threads - 1, order) : [];
  // What is prepared holds for all threads, and stored code fits only before.
  if (others.length === 0) prepareFor(left);
  let prepared = others.length === 0;
  const tell = () => {
    progress?.show(done(order), left.length);
    if (prepared || loaded(order) <= others.length) return;
    prepared = true;
    prepareFor(left);
  };
  for (const one of await taken(order, texts, tell)) results.set(one.path, one);
  for (const found of await Promise.all(others)) for (const one of found) results.set(one.path, one);
  // What a worker took and did not bring (it ran out of memory, say) is done here.
  const lost = left.filter((file) => !results.has(file));
  const again = withTimeLimit(() => eachChecker(texts), timeLimit);
  for (const one of again(lost)) results.set(one.path, one);
  progress?.end();
  for (const file of left) {
    const result = results.get(file);
    if (result && isFinished(result)) cache?.keep(file, houseOf(file), result.uses, result);
  }
  return files.flatMap((file) => results.get(file) ?? []);
}

/** Takes runs of files until none is left. */
export async function taken(order: Order, texts: Disk, tell?: () => void): Promise<FileChecked[]> {
  const { eachChecker } = await import('../checks/check-project.ts');
  const check = withTimeLimit(() => eachChecker(texts), order.timeLimit);
  const counters = new Int32Array(order.counters);
  Atomics.add(counters, 2, 1);
  const found: FileChecked[] = [];
  for (;;) {
    const from = Atomics.add(counters, 0, RUN);
    const run = order.files.slice(from, from + RUN);
    if (run.length === 0) return found;
    found.push(
      ...check(run, () => {
        Atomics.add(counters, 1, 1);
        tell?.();
      }),
    );
  }
}

function done({ counters }: Order): number {
  return Atomics.load(new Int32Array(counters), 1);
}

function loaded({ counters }: Order): number {
  return Atomics.load(new Int32Array(counters), 2);
}

/** The results of other threads; none where one died. Node's threads are loaded for them only. */
async function inWorkers(count: number, order: Order): Promise<Promise<FileChecked[]>[]> {
  const { isMainThread, Worker } = await import('node:worker_threads');
  if (!isMainThread) return [];
  return Array.from(
    { length: count },
    () =>
      new Promise((resolve) => {
        const worker = new Worker(process.argv[1]!, { argv: ['worker'], workerData: order });
        let found: FileChecked[] = [];
        worker.on('message', (message: FileChecked[]) => {
          found = message;
        });
        worker.on('error', () => resolve([]));
        worker.on('exit', () => resolve(found));
      }),
  );
}
