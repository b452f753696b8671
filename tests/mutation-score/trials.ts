/**
 * Each sampled mutant against the tests that come by it: first those that noticed others of its file, then the quick
 * ones. What survives and is come by in a single test is tried once more in a new process with the mutant on
 * from the start: a table that is worked out once and kept would hide it.
 */
import { dirname } from 'node:path';
import type { Child } from './child.ts';
import type { Mutant } from './mutants.ts';
import type { DryTest, Said } from './run.ts';

export type Outcome = 'killed' | 'hangs' | 'survived' | 'not covered' | 'static';

export interface Trial {
  mutant: Mutant;
  outcome: Outcome;
  by?: string;
  /** By a slower test, which only a patient run shows it. */
  late?: true;
}

/** A single test that takes longer than this is not shown mutants. */
export const SLOW_MS = 700;
/** How much time of the processor the tests of one mutant may take, */
const BUDGET_MS = 4_000;
/** and, where somebody is patient, the slower tests of one that survived. */
const PATIENT_MS = 20_000;
/** What is worked out once and kept is come by in the first test that wants it. */
const FEW = 1;
/** Other work on the machine makes everything slower; what hangs, hangs longer. */
const PATIENCE_MS = 400_000;

export class Trials {
  private readonly child: Child;
  private readonly tests: readonly DryTest[];
  private readonly still: ReadonlySet<string>;
  private readonly collecting: Readonly<Record<string, number>>;
  /** For each file, how often each test noticed one of its mutants. */
  private readonly noticed = new Map<string, Map<number, number>>();

  constructor(child: Child, dry: Said & { said: 'dry' }) {
    this.child = child;
    this.tests = dry.tests;
    this.still = new Set(dry.static);
    this.collecting = dry.collecting;
  }

  async of(mutant: Mutant, id: string): Promise<Trial> {
    const covering = this.covering(mutant.file, id);
    if (covering.length === 0) {
      if (this.still.has(id)) return { mutant, outcome: 'static' };
      if (!(id in this.collecting)) return { mutant, outcome: 'not covered' };
    }
    const first = await this.run(id, covering);
    if (typeof first === 'object' && first.said === 'mutant' && first.killedBy !== undefined) {
      if (!first.dirty) return this.killed(mutant, first.killedBy);
      this.child.end();
      const again = await this.run(id, [first.killedBy, ...covering]);
      this.child.end();
      const by = typeof again === 'object' && again.said === 'mutant' ? again.killedBy : first.killedBy;
      if (by !== undefined) return this.killed(mutant, by);
    }
    if (first === undefined) return { mutant, outcome: 'hangs' };
    if (typeof first === 'string') return { mutant, outcome: 'killed', by: first };
    if (covering.length > FEW) return { mutant, outcome: 'survived' };
    const anew = await this.run(id, covering, id);
    this.child.end();
    if (anew === undefined) return { mutant, outcome: 'hangs' };
    if (typeof anew === 'string') return { mutant, outcome: 'killed', by: anew };
    return anew.said === 'mutant' && anew.killedBy !== undefined
      ? this.killed(mutant, anew.killedBy)
      : { mutant, outcome: 'survived' };
  }

  /** What survived, shown the slower tests that come by it too. */
  async patiently(mutant: Mutant, id: string): Promise<Trial> {
    const slower = this.coveringSlower(id);
    const said = slower.length > 0 ? await this.run(id, slower, undefined, PATIENT_MS) : { said: 'nothing' };
    this.child.end();
    if (said === undefined) return { mutant, outcome: 'hangs', late: true };
    if (typeof said === 'string') return { mutant, outcome: 'killed', by: said, late: true };
    return 'killedBy' in said && said.killedBy !== undefined
      ? { ...this.killed(mutant, said.killedBy), late: true }
      : { mutant, outcome: 'survived' };
  }

  /**
   * First those that noticed others of its file, then those of its own room, which are about it, then the quick ones:
   * where thousands come by, not all are shown it.
   */
  private covering(file: string, id: string): number[] {
    const noticed = this.noticed.get(file);
    const room = `tests/${dirname(file)}`;
    const about = ({ name }: DryTest) =>
      name.startsWith(room) || room.startsWith(dirname(name.split(' > ')[0]!)) ? 0 : 1;
    return this.tests
      .map((test, index) => ({ test, index, about: about(test), known: noticed?.get(index) ?? 0 }))
      .filter(({ test }) => !test.failed && test.ms < SLOW_MS && id in test.covers)
      .sort((a, b) => b.known - a.known || a.about - b.about || a.test.ms - b.test.ms)
      .map(({ index }) => index);
  }

  private coveringSlower(id: string): number[] {
    return this.tests
      .map((test, index) => ({ test, index }))
      .filter(({ test }) => !test.failed && test.ms >= SLOW_MS && id in test.covers)
      .sort((a, b) => a.test.ms - b.test.ms)
      .map(({ index }) => index);
  }

  private run(id: string, tests: readonly number[], active?: string, budgetMs = BUDGET_MS) {
    const hits = Math.max(0, ...tests.map((index) => this.tests[index]!.covers[id] ?? 0));
    return this.child.ask({ ask: 'mutant', id, tests, hits, budgetMs }, PATIENCE_MS, active);
  }

  private killed(mutant: Mutant, index: number): Trial {
    const noticed = this.noticed.get(mutant.file) ?? new Map<number, number>();
    noticed.set(index, (noticed.get(index) ?? 0) + 1);
    this.noticed.set(mutant.file, noticed);
    return { mutant, outcome: 'killed', by: this.tests[index]!.name };
  }
}
