/**
 * Tries seeds: which are found, by which checks, and of those that are not, which the independent executor (tests/oracle)
 * shows to be no fault. On the right texts nothing may be found.
 */
import { Trial } from '../../language-server/features/trial.ts';
import { memoryHost } from '../../language-server/project/project.ts';
import { isWrong } from '../oracle/executor.ts';
import { filesFor } from './right.ts';
import { SEED_KINDS, type Seed, type SeedKind, seedsOf } from './seeds.ts';

export interface Tried {
  readonly path: string;
  readonly seed: Seed;
  /** The checks that find something. */
  readonly checks: readonly string[];
  /** The independent executor's word; it knows states only, nothing of notices, fluids and lists. */
  readonly wrongForOracle: boolean;
}

/** What is about states, so that the executor's word counts. */
const STATES: ReadonlySet<SeedKind> = new Set([
  'proof dropped',
  'lock dropped',
  'cleaning dropped',
  'bleeding dropped',
  'filling dropped',
]);

/** Every `of`th seed of a right procedure file. */
export function trySeeds(path: string, of = 1): { tried: Tried[]; onRight: string[] } {
  const files = filesFor(path);
  const source = files[path]!;
  const seeds = seedsOf(source, Object.values(files).join('\n')).filter((_, index) => index % of === 0);
  const trial = new Trial(memoryHost(files), path);
  const found = (text: string) => [
    ...new Set(
      trial
        .check(text)
        .findings.filter((finding) => finding.file === path)
        .map(({ check, about }) => about?.check ?? check),
    ),
  ];
  const tried = seeds.map((seed) => {
    const checks = found(seed.text);
    const asks = STATES.has(seed.kind) && checks.length === 0;
    return { path, seed, checks, wrongForOracle: asks && isWrong(filesFor(path, seed.text), path) };
  });
  return { tried, onRight: found(source) };
}

export interface Row {
  readonly kind: SeedKind;
  readonly seeded: number;
  readonly found: number;
  /** By a check that is about it. */
  readonly byItsOwn: number;
  /** Not found, and no fault: for the independent executor, or by what the machine file leaves unsaid. */
  readonly noFault: number;
  readonly by: readonly [string, number][];
  readonly missed: readonly Tried[];
}

export function rows(tried: readonly Tried[]): Row[] {
  return (Object.keys(SEED_KINDS) as SeedKind[]).map((kind) => {
    const own: readonly string[] = SEED_KINDS[kind];
    const of = tried.filter(({ seed }) => seed.kind === kind);
    const found = of.filter(({ checks }) => checks.length > 0);
    const by = new Map<string, number>();
    for (const { checks } of found) for (const check of checks) by.set(check, (by.get(check) ?? 0) + 1);
    const left = of.filter(({ checks }) => checks.length === 0);
    const isNone = ({ seed, wrongForOracle }: Tried) =>
      seed.noFault !== undefined || (STATES.has(kind) && !wrongForOracle);
    return {
      kind,
      seeded: of.length,
      found: found.length,
      byItsOwn: found.filter(({ checks }) => checks.some((check) => own.includes(check))).length,
      noFault: left.filter(isNone).length,
      by: [...by].sort((a, b) => b[1] - a[1]),
      missed: left.filter((one) => !isNone(one)),
    };
  });
}
