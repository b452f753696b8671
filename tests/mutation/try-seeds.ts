/**
 * Tries seeds: which are found, by which checks, and of those that are not, which the independent executor (tests/oracle)
 * shows to be no fault. On the right texts nothing may be found.
 */
import { Trial } from '../../language-server/features/trial.ts';
import { memoryHost } from '../../language-server/project/project.ts';
import { judge } from '../oracle/executor.ts';
import { filesFor } from './right.ts';
import { SEED_KINDS, type Seed, type SeedKind, seedsOf } from './seeds.ts';

export interface Tried {
  readonly path: string;
  readonly seed: Seed;
  /** The checks that find something. */
  readonly checks: readonly string[];
  /** What the independent executor finds; asked where the checks find nothing, or for all. */
  readonly executor: readonly string[] | undefined;
}

/** Every `of`th seed of a right procedure file. */
export function trySeeds(path: string, of = 1, askForAll = false): { tried: Tried[]; onRight: string[] } {
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
    const asked = askForAll || checks.length === 0;
    const executor = asked ? judge(filesFor(path, seed.text), path).map(({ kind }) => kind) : undefined;
    return { path, seed, checks, executor };
  });
  return { tried, onRight: found(source) };
}

export interface Row {
  readonly kind: SeedKind;
  readonly seeded: number;
  readonly found: number;
  /** By a check that is about it. */
  readonly byItsOwn: number;
  /** Not found, and no fault for the independent executor. */
  readonly noFault: number;
  readonly by: readonly [string, number][];
  /** Not found, and wrong for the executor. */
  readonly open: readonly Tried[];
  /** Found, and wrong for the executor too, where it was asked. */
  readonly alsoWrong: number;
}

export function rows(tried: readonly Tried[]): Row[] {
  return (Object.keys(SEED_KINDS) as SeedKind[]).map((kind) => {
    const own: readonly string[] = SEED_KINDS[kind];
    const of = tried.filter(({ seed }) => seed.kind === kind);
    const found = of.filter(({ checks }) => checks.length > 0);
    const by = new Map<string, number>();
    for (const { checks } of found) for (const check of checks) by.set(check, (by.get(check) ?? 0) + 1);
    const left = of.filter(({ checks }) => checks.length === 0);
    const isNone = ({ executor }: Tried) => executor?.length === 0;
    return {
      kind,
      seeded: of.length,
      found: found.length,
      byItsOwn: found.filter(({ checks }) => checks.some((check) => own.includes(check))).length,
      noFault: left.filter(isNone).length,
      by: [...by].sort((a, b) => b[1] - a[1]),
      open: left.filter((one) => !isNone(one)),
      alsoWrong: found.filter(({ executor }) => executor && executor.length > 0).length,
    };
  });
}
