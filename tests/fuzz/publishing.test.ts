/** Published texts by chance; html-validate looks at the pages of some of them. */
import { expect, it } from 'vitest';
import { invalidIn } from '../browser/validity.ts';
import { publishing } from './broken-publishing.ts';
import { published } from './markup.ts';

it('150 published texts from seed 1', { timeout: 1_200_000 }, async () => {
  const wrong: string[] = [];
  let pages = 0;
  for (let seed = 1; seed <= 150; seed++) {
    const made = await publishing(published(seed));
    if (made.wrong !== undefined) wrong.push(`seed ${seed}: ${made.wrong}`);
    pages += made.pages.length;
    if (seed % 15 === 0)
      for (const page of made.pages)
        for (const invalid of await invalidIn(page)) wrong.push(`seed ${seed}: ${invalid}`);
  }
  expect(wrong).toEqual([]);
  // The index, the list of checks, and on average more than one page of a machine or procedure.
  expect(pages).toBeGreaterThan(450);
});
