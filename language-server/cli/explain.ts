/** `dowel explain`: what a check looks at, why, and a bad and a good example; or the list of all checks. */
import { ALL_CHECKS } from '../checks/all.ts';
import type { Check } from '../checks/check.ts';
import { toolFailure } from '../checks/text/tool-failure.ts';
import { configWrong } from '../config/config-wrong.ts';
import { fileTooLarge } from './file-too-large.ts';
import { findingsCut } from './findings-cut.ts';
import { complain, type ExitCode, print } from './output.ts';
import { pictureMissing } from './picture-missing.ts';
import { fileNotFinished } from './time-limit.ts';

/** What can be explained: the list, and the findings that no example can show. */
export const EXPLAINED: readonly Check[] = [
  ...ALL_CHECKS,
  fileTooLarge,
  findingsCut,
  fileNotFinished,
  pictureMissing,
  configWrong,
  toolFailure,
];

export function explain(name: string | undefined): ExitCode {
  if (name === undefined) {
    print(listing(EXPLAINED));
    return 0;
  }
  const check = EXPLAINED.find((candidate) => candidate.name === name);
  if (check === undefined) {
    complain(`there is no check named ${name}. ${advice(name)}`);
    return 2;
  }
  print(page(check));
  return 0;
}

/** All checks by group, in the order of the list. */
export function listing(checks: readonly Check[]): string {
  const width = Math.max(...checks.map((check) => check.name.length));
  const groups = [...new Set(checks.map((check) => check.group))];
  const parts = groups.map((group) => {
    const rows = checks
      .filter((check) => check.group === group)
      .map((check) => `  ${check.name.padEnd(width)}  ${check.severity.padEnd(11)}  ${check.title}`);
    return [group, ...rows].join('\n');
  });
  return `${parts.join('\n\n')}\n\ndowel explain CHECK tells more about one of them.`;
}

export function page(check: Check): string {
  return [
    `${check.name} (${check.severity}, ${check.group.toLowerCase()})`,
    check.title,
    check.explanation.trim(),
    `Source: ${check.source}`,
    ...(check.bad === '' ? [] : [`Wrong:\n\n${indented(check.bad)}`]),
    ...(check.good === '' ? [] : [`Right:\n\n${indented(check.good)}`]),
  ].join('\n\n');
}

function indented(text: string): string {
  return text
    .trim()
    .split('\n')
    .map((line) => `    ${line}`.trimEnd())
    .join('\n');
}

function advice(name: string): string {
  const pieces = name.split('-').filter((piece) => piece.length > 2);
  const near = EXPLAINED.filter((check) => pieces.some((piece) => check.name.includes(piece)));
  const names = near.slice(0, 3).map((check) => check.name);
  return names.length > 0
    ? `Did you mean ${names.join(' or ')}?`
    : 'dowel explain without a name lists them all.';
}
