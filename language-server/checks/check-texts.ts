/** Checks texts in memory: for tests, pages and editors. */
import { memoryHost } from '../project/project.ts';
import { type CheckResult, checkProject } from './check-project.ts';

export function checkTexts(files: Readonly<Record<string, string>>, ...paths: string[]): CheckResult {
  return checkProject(memoryHost(files), paths.length > 0 ? paths : Object.keys(files));
}
