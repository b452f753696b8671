/**
 * The shortcut for spoiled texts gives the verdicts of a full run. Source of the expected verdicts: the full run of
 * every case from the start, which takes no shortcut.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { mutantsOf } from '../mutation/mutants.ts';
import { execute, isWrong, tracesOf } from './executor.ts';

const EVERYDAY = new URL('../everyday/', import.meta.url);
const NAMES = readdirSync(EVERYDAY).filter((name) => name.endsWith('.dowel'));

it.each(NAMES)('%s', (name) => {
  const right = readFileSync(new URL(name, EVERYDAY), 'utf8');
  const traces = tracesOf({ [name]: right }, name);
  expect(traces).toBeDefined();
  for (const { text, description } of mutantsOf(right)) {
    const files = { [name]: text };
    expect(isWrong(files, name, traces), description).toBe(execute(files, name).length > 0);
  }
});
