/** What reading a file has shown, as facts: each problem of the parser, with its example and its mend. */
import type { Fact } from '../model/facts.ts';
import type { LoadedFile } from '../model/names.ts';

export function readingFacts({ path: file, parsed }: Pick<LoadedFile, 'path' | 'parsed'>): Fact[] {
  return parsed.problems.map(({ check, start, end, message, example, related, mend }) => ({
    check,
    at: { file, start, end },
    words: { message, ...(example ? { example } : {}) },
    ...(related
      ? {
          story: [
            {
              at: { file, start: related.start, end: related.end },
              what: 'declared' as const,
              says: related.message,
            },
          ],
        }
      : {}),
    ...(mend
      ? { mends: [{ title: mend.title, at: { file, start: mend.start, end: mend.end }, text: mend.text }] }
      : {}),
  }));
}
