/**
 * The list of findings that were there before a team began to check: they are known, are neither shown nor counted, and
 * the list can only shrink unless somebody says that it shall grow. One finding a line, so that a review sees which
 * ones came and went.
 */
import { z } from 'zod';
import type { Finding } from '../report/finding.ts';
import { readText } from './read.ts';
import { type Failure, writeText } from './replace.ts';

const entry = z.strictObject({
  fingerprint: z.string().regex(/^[0-9a-f]{16}$/, 'is not a fingerprint (16 digits from 0 to f)'),
  check: z.string(),
  file: z.string(),
  message: z.string(),
});

const form = z.strictObject({ schema: z.literal(1), known: z.array(entry) });

export type Known = z.infer<typeof entry>;

/** How a list is brought up to date after a run: `shrink` takes out what is gone, `grow` takes in what is new too. */
export type BaselineUpdate = 'shrink' | 'grow';

/** The entries of the list, or why it cannot be had. */
export function readBaseline(path: string): { known: Known[] } | Failure {
  const result = readText(path);
  if ('reason' in result) return result;
  if ('tooLarge' in result) return { reason: 'it is too large', remedy: 'Make it anew.' };
  const again = 'Put it back as it was, or remove it and run with --baseline-update=grow.';
  let data: unknown;
  try {
    data = JSON.parse(result.text);
  } catch (error) {
    return { reason: `it is not JSON (${(error as Error).message})`, remedy: again };
  }
  const read = form.safeParse(data);
  if (read.success) return { known: read.data.known };
  const { path: field, message } = read.error.issues[0]!;
  return {
    reason: `it is no list of known findings: ${field.join('.') || 'the whole'}: ${message}`,
    remedy: again,
  };
}

/** The list after a run; in reading order of file and check, so that equal lists are equal texts. */
export function updated(
  known: readonly Known[],
  found: readonly { finding: Finding; fingerprint: string }[],
  how: BaselineUpdate,
): Known[] {
  const before = new Set(known.map(({ fingerprint }) => fingerprint));
  return found
    .filter(({ fingerprint }) => how === 'grow' || before.has(fingerprint))
    .map(({ finding: { check, file, message }, fingerprint }) => ({ fingerprint, check, file, message }))
    .sort((a, b) => order(a.file, b.file) || order(a.check, b.check) || order(a.fingerprint, b.fingerprint));
}

export function writeBaseline(path: string, known: readonly Known[]): Failure | undefined {
  const rows = known.map((one) => `    ${JSON.stringify(one)}`).join(',\n');
  return writeText(path, `{\n  "schema": 1,\n  "known": [${rows === '' ? '' : `\n${rows}\n  `}]\n}\n`);
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
