/**
 * Everything that is wrong with some files: reads them and what they use, and checks each with what its house has agreed
 * on (see project-check.ts). Pure but for the host that gives the texts.
 */
import { Loader } from '../model/names.ts';
import type { House, SourceHost } from '../project/project.ts';
import type { Finding } from '../report/finding.ts';
import { ProjectCheck } from './project-check.ts';
import { type CheckResult, type FileChecked, together } from './together.ts';
import { readFor } from './uses.ts';

export type { House } from '../project/project.ts';
export type { CheckResult, FileChecked } from './together.ts';

/** Without a `house`, what the host says each file's house has agreed on. */
export function checkProject(host: SourceHost, paths: readonly string[], house?: House): CheckResult {
  return allTogether(host, paths, checkEach(host, paths, house), house);
}

/** Each file for itself; `done` is called after each. A file that cannot be had has no result. */
export function checkEach(
  host: SourceHost,
  paths: readonly string[],
  house?: House,
  done?: () => void,
): FileChecked[] {
  return eachChecker(host, house)(paths, done);
}

/**
 * The same for files that come in turns: what several of them use (a machine and its model) is read and made once. A file
 * that no other has used so far is let go when it has been checked, so that a large folder takes little room.
 */
export function eachChecker(
  host: SourceHost,
  house?: House,
): (paths: readonly string[], done?: () => void) => FileChecked[] {
  const checkers = new Map<House | undefined, { loader: Loader; checker: ProjectCheck }>();
  return (paths, done) => {
    const found: FileChecked[] = [];
    for (const [agreed, files] of byHouse(host, paths, house)) {
      let known = checkers.get(agreed);
      if (!known) {
        const loader = new Loader(host, agreed?.ruleFiles);
        known = { loader, checker: new ProjectCheck(loader, new Map(), agreed) };
        checkers.set(agreed, known);
      }
      const { loader, checker } = known;
      for (const path of files) {
        const file = loader.load(path);
        if (!file) continue;
        const { statements } = checker;
        checker.file(file);
        found.push({
          path,
          findings: checker.findings.splice(0),
          waived: checker.waived.splice(0),
          statements: checker.statements - statements,
          rules: checker.uses.splice(0),
          uses: readFor(host, loader.visible(file), agreed),
        });
        if (loader.letGo(file)) checker.letGo(file);
        done?.();
      }
    }
    return found;
  };
}

/** The result for all files, and what only all together show. `paths`: what was asked for. */
export function allTogether(
  host: SourceHost,
  paths: readonly string[],
  each: readonly FileChecked[],
  house?: House,
): CheckResult {
  const more: Finding[] = [];
  const byPath = new Map(each.map((one) => [one.path, one]));
  for (const [agreed, files] of byHouse(host, paths, house)) {
    const checker = new ProjectCheck(new Loader(host), new Map(), agreed);
    const rules = files.flatMap((path) => byPath.get(path)?.rules ?? []);
    checker.together(rules, new Set(files.filter((path) => byPath.has(path))));
    more.push(...checker.findings);
  }
  return { ...together(each, more), files: paths.length };
}

function byHouse(
  host: SourceHost,
  paths: readonly string[],
  house: House | undefined,
): Map<House | undefined, string[]> {
  const groups = new Map<House | undefined, string[]>();
  for (const path of paths) {
    const agreed = house ?? host.houseOf?.(path);
    const group = groups.get(agreed);
    if (group) group.push(path);
    else groups.set(agreed, [path]);
  }
  return groups;
}
