/** The part of the fuzzing that every test run does: texts by chance, none of which breaks anything or hangs. */
import { expect, it } from 'vitest';
import { broken } from './broken.ts';
import { input } from './inputs.ts';

/** So long no text of this size may take, on however slow a machine. */
const HANGS_MS = 20_000;

export function fuzzes(first: number, count: number): void {
  it(`${count} texts from seed ${first}`, { timeout: 1_200_000 }, () => {
    const wrong: string[] = [];
    for (let seed = first; seed < first + count; seed++) {
      const { text } = input(seed);
      const start = performance.now();
      const said = broken(text, seed % 5 === 0);
      if (said !== undefined) wrong.push(`seed ${seed}: ${said}`);
      else if (performance.now() - start > HANGS_MS) wrong.push(`seed ${seed} hangs`);
    }
    expect(wrong).toEqual([]);
  });
}
