/**
 * The program beside the bundled tests: told over the channel of its parent, it runs all tests once and says what each
 * covers, or runs some of them with one mutant switched on until one fails. No answer in time means that it hangs: the
 * parent ends it.
 */
import { collect, registered, switches } from './names.ts';

export interface DryTest {
  name: string;
  ms: number;
  failed: boolean;
  /** How often it came by each mutant. */
  covers: Record<string, number>;
}

export type Asked =
  | { ask: 'dry' }
  | { ask: 'mutant'; id: string; tests: readonly number[]; hits: number; budgetMs: number };

export type Said =
  | { said: 'ready'; failed?: string }
  | { said: 'dry'; tests: DryTest[]; static: string[]; collecting: Record<string, number> }
  | { said: 'mutant'; killedBy?: number; dirty?: boolean; ran: number; outOfTime?: boolean };

const say = (said: Said) => process.send!(said);
/** A mutant that is come by so many times more often than without it goes round for ever. */
const MORE_HITS = 100;

async function passes(index: number): Promise<boolean> {
  try {
    await registered[index]!.body();
    return true;
  } catch {
    return false;
  }
}

async function dry(): Promise<Said> {
  const loaded = switches.mutantCoverage ?? { static: {}, perTest: {} };
  const [collecting = {}] = Object.values(loaded.perTest);
  const tests: DryTest[] = [];
  for (const [index, { name }] of registered.entries()) {
    switches.currentTestId = `t${index}`;
    const start = process.cpuUsage();
    const passed = await passes(index);
    const { user, system } = process.cpuUsage(start);
    const covers = switches.mutantCoverage?.perTest[`t${index}`] ?? {};
    tests.push({ name, ms: (user + system) / 1000, failed: !passed, covers });
  }
  switches.currentTestId = undefined;
  return { said: 'dry', tests, static: Object.keys(loaded.static), collecting };
}

async function mutant({ id, tests, hits, budgetMs }: Asked & { ask: 'mutant' }): Promise<Said> {
  const began = process.cpuUsage();
  for (const [ran, index] of tests.entries()) {
    const { user, system } = process.cpuUsage(began);
    if ((user + system) / 1000 > budgetMs) return { said: 'mutant', ran, outOfTime: true };
    Object.assign(switches, { activeMutant: id, hitCount: 0, hitLimit: 10_000 + MORE_HITS * hits });
    const passed = await passes(index);
    switches.activeMutant = undefined;
    // What fails without the mutant too fails for what an earlier one left behind: the parent starts anew.
    if (!passed) return { said: 'mutant', killedBy: index, dirty: !(await passes(index)), ran: ran + 1 };
  }
  return { said: 'mutant', ran: tests.length };
}

process.on('message', async (asked: Asked) => say(asked.ask === 'dry' ? await dry() : await mutant(asked)));
switches.currentTestId = undefined;
try {
  collect();
  say({ said: 'ready' });
} catch (error) {
  say({ said: 'ready', failed: String(error) });
}
