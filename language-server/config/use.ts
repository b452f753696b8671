/** From what a configuration file says to what the checker is given: rule files found, paths left out. No disk. */
import type { House, SourceHost } from '../project/project.ts';
import type { Finding } from '../report/finding.ts';
import type { ReadConfig } from './config.ts';
import { configFinding } from './config-wrong.ts';

export interface UsedConfig {
  house: House;
  /** What is wrong with the file, and rule files that are not there. */
  problems: Finding[];
}

/** `path` is the configuration file, as the host writes it. */
export function houseOf(
  { config, problems, rulesAt }: ReadConfig,
  host: SourceHost,
  path: string,
): UsedConfig {
  const ruleFiles: string[] = [];
  const missing: Finding[] = [];
  config.rules.forEach((written, index) => {
    const file = host.resolve(path, written);
    if (host.read(file) !== undefined) ruleFiles.push(file);
    else
      missing.push(
        configFinding(
          rulesAt[index] ?? { file: path, start: 0, end: 0 },
          `The file of rules “${written}” cannot be read.`,
          'Check how the path is written; it is seen from the configuration file.',
        ),
      );
  });
  const { convention, liftingGuideline, severities } = config;
  return {
    house: { convention, liftingGuideline, severities, ruleFiles },
    problems: [...problems, ...missing],
  };
}

/**
 * Whether a path is left out: `path` is seen from the folder of the configuration, with `/`. A pattern that names a
 * folder leaves out all that is in it; `*` stands for anything within a name, `**` for any folders.
 */
export function isIgnored(patterns: readonly string[], path: string): boolean {
  return patterns.some((pattern) => expressionOf(pattern).test(path));
}

function expressionOf(pattern: string): RegExp {
  const parts = pattern.replace(/^\.\//, '').replace(/\/+$/, '').split('/');
  const body = parts
    .map((part, index) => {
      const last = index === parts.length - 1;
      if (part === '**') return last ? '.*' : '(?:[^/]+/)*';
      const name = part
        .replace(/[.+^${}()|[\]\\]/g, '\\$&')
        .replace(/\*+/g, '[^/]*')
        .replace(/\?/g, '[^/]');
      return last ? name : `${name}/`;
    })
    .join('');
  return new RegExp(`^${body}(?:/|$)`);
}
