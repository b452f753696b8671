/**
 * Time measured so that a busy machine spoils it least: the things that are compared run in turn within one
 * sitting, and each is set against the base of the same round. What is quoted is the median of those ratios.
 */
import { spawnSync } from 'node:child_process';

export interface Measured {
  /** Milliseconds, median over the rounds. */
  ms: number;
  /** Against the base of the same round: median, lower and upper quartile. */
  ratio: number;
  low: number;
  high: number;
}

/** Milliseconds that passed. */
const passed = () => performance.now();

/** Milliseconds that this process was given, all its threads together: other work on the machine counts less. */
export function given(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Runs every job once in each round, the first name being the base; the first `warmUp` rounds do not count. */
export function interleaved<Name extends string>(
  jobs: readonly (readonly [Name, () => void])[],
  { rounds, warmUp, clock = passed }: { rounds: number; warmUp: number; clock?: () => number },
): Record<Name, Measured> {
  const times = jobs.map((): number[] => []);
  for (let round = 0; round < rounds + warmUp; round++) {
    // Each round begins with another job, so that none always follows the same one.
    for (let turn = 0; turn < jobs.length; turn++) {
      const index = (turn + round) % jobs.length;
      const began = clock();
      jobs[index]![1]();
      const took = clock() - began;
      if (round >= warmUp) times[index]!.push(took);
    }
  }
  const entries = jobs.map(([name], index) => {
    const ratios = times[index]!.map((time, round) => time / times[0]![round]!);
    return [
      name,
      {
        ms: quantile(times[index]!, 0.5),
        ratio: quantile(ratios, 0.5),
        low: quantile(ratios, 0.25),
        high: quantile(ratios, 0.75),
      },
    ] as const;
  });
  return Object.fromEntries(entries) as Record<Name, Measured>;
}

export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const place = (sorted.length - 1) * share;
  const below = Math.floor(place);
  const rest = place - below;
  return sorted[below]! * (1 - rest) + sorted[Math.min(below + 1, sorted.length - 1)]! * rest;
}

/** Runs a program and throws where it does not end with one of the expected codes. */
export function runProgram(command: string, args: readonly string[], codes: readonly number[] = [0]): void {
  const { status, stderr } = spawnSync(command, args, {
    stdio: ['ignore', 'ignore', 'pipe'],
    encoding: 'utf8',
  });
  if (!codes.includes(status ?? -1)) throw new Error(`${command} ${args.join(' ')}: ${status}\n${stderr}`);
}

/**
 * Peak memory (resident set) of a Node script in MB, as the system counts it. `hook` is a script that is loaded
 * first and prints the count at the end: see PEAK_HOOK.
 */
export function peakMemory(hook: string, args: readonly string[]): number {
  const { stderr } = spawnSync(process.execPath, ['--require', hook, ...args], {
    stdio: ['ignore', 'ignore', 'pipe'],
    encoding: 'utf8',
  });
  return Number(/peak (\d+)/.exec(stderr)![1]) / 1024;
}

export const PEAK_HOOK = `process.on('exit', () =>
  require('node:fs').writeSync(2, 'peak ' + process.resourceUsage().maxRSS + '\\n'));
`;

export function hasProgram(name: string): boolean {
  return spawnSync(name, ['--version'], { stdio: 'ignore' }).error === undefined;
}

/** The power with which time grows with size between two measurements. */
export function growth(from: { size: number; ms: number }, to: { size: number; ms: number }): number {
  return Math.log(to.ms / from.ms) / Math.log(to.size / from.size);
}
