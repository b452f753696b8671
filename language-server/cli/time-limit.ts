/**
 * No file holds up the others: where one takes longer than the limit its check is ended, which is a finding, and the rest
 * is checked. What a file can ask for is bounded by counts (depth, size, cases, rounds, uses), so this is met by what
 * those do not foresee, and by a machine that is very slow. Loops and regular expressions end alike: Node stops the
 * engine itself, so nothing below this room has to look at a clock.
 */
import { Script } from 'node:vm';
import type { Check } from '../checks/check.ts';
import { findingOf } from '../checks/finding-of.ts';
import type { FileChecked } from '../checks/together.ts';

/** Seconds for one file, where the command line names no other. */
export const TIME_LIMIT = 60;
/** A limit costs a quarter of a millisecond, so files share one as long as none needs it for itself. */
const RUN = 8;

/** Its example would have to be slow, so it stands beside the list of checks. */
export const fileNotFinished: Check = {
  name: 'file-not-finished',
  group: 'Text',
  severity: 'error',
  title: 'Checking a file took longer than the time limit, and was ended.',
  explanation: `
The other files are checked as ever. Nothing is said about this one: it may have any number of faults. A procedure of
20,000 steps takes a few seconds, so a file that is not finished after a minute is most likely not what it should be,
or the machine that checks has other work. \`--time-limit SECONDS\` gives more time.`,
  source: 'a limit of this tool',
  bad: '',
  good: '',
  says: ({ words = {} }) => ({
    message: `Checking this file took longer than ${words.limit} s and was ended: nothing is known about it.`,
    help: 'Split it into procedures that use one another, or give more time with --time-limit.',
  }),
};

/** Checks some files one after the other; `done` after each. Not asynchronous: the limit ends what runs now. */
export type EachCheck = (paths: readonly string[], done?: () => void) => FileChecked[];

/**
 * The same check with at most so many seconds for each file. `make` makes the check anew after it was ended in the
 * middle: what it had worked out half is not used again.
 */
export function withTimeLimit(make: () => EachCheck, seconds = TIME_LIMIT): EachCheck {
  let check = make();
  const ended = (paths: readonly string[], done?: () => void): FileChecked[] | undefined => {
    const found = within(seconds, () => check(paths, done));
    if (!found) check = make();
    return found;
  };
  const run = (paths: readonly string[], done?: () => void): FileChecked[] => {
    const found = ended(paths);
    if (found) {
      for (const _ of paths) done?.();
      return found;
    }
    return paths.flatMap((path) => {
      const alone = (paths.length > 1 && ended([path])) || [notFinished(path, seconds)];
      done?.();
      return alone;
    });
  };
  return (paths, done) => {
    const found: FileChecked[] = [];
    for (let at = 0; at < paths.length; at += RUN) found.push(...run(paths.slice(at, at + RUN), done));
    return found;
  };
}

/** A result that hangs on how busy the machine was: not one to keep for later runs. */
export function isFinished({ findings }: FileChecked): boolean {
  return !findings.some(({ check }) => check === fileNotFinished.name);
}

function notFinished(path: string, seconds: number): FileChecked {
  const at = { file: path, start: 0, end: 0 };
  const finding = findingOf(fileNotFinished, at, { limit: String(seconds) });
  return { path, findings: [finding], waived: [], statements: 0, rules: [], uses: [path] };
}

const TURN = Symbol.for('dowel.turn');
/** Only a script can be given a time limit, so what is to be done is handed to one. */
const script = new Script('globalThis[Symbol.for("dowel.turn")]()');

/** What the work gives, or undefined where it was ended. */
function within<T>(seconds: number, work: () => T): T | undefined {
  const shared = globalThis as { [TURN]?: () => T };
  shared[TURN] = work;
  try {
    return script.runInThisContext({ timeout: Math.max(1, Math.round(seconds * 1000)) }) as T;
  } catch (error) {
    if ((error as { code?: string }).code === 'ERR_SCRIPT_EXECUTION_TIMEOUT') return undefined;
    throw error;
  } finally {
    delete shared[TURN];
  }
}
