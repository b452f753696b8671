/** The finding about the configuration file itself. */
import type { Check } from '../checks/check.ts';
import { findingOf } from '../checks/finding-of.ts';
import type { Finding, Place } from '../report/finding.ts';
import { CONFIG_NAME } from './house.ts';

/** Its examples are no Dowel, so it stands beside the list of checks; tests of its own run them. */
export const configWrong: Check = {
  name: 'config-wrong',
  group: 'Text',
  severity: 'error',
  title: 'The configuration file says something that Dowel does not understand.',
  explanation: `
\`${CONFIG_NAME}\` says what a house has agreed on: how severe findings are, what signal words mean, which rules hold. A
field that is misspelt would silently change nothing, so every field and every value is looked at, and what is not known
is reported with what may stand there. All fields that are right hold all the same.

Editors that know JSON Schema help while you type.`,
  source: 'the form of the file',
  bad: `{ "convention": "navy" }`,
  good: `{ "convention": "military" }`,
  says: ({ words = {} }) => ({ message: words.message ?? '', ...(words.help ? { help: words.help } : {}) }),
};

export function configFinding(at: Place, message: string, help: string): Finding {
  return findingOf(configWrong, at, { message, help });
}
