/** A text before and after it is laid out, as tests write it. */
import { expect } from 'vitest';
import { expectLayoutHolds } from './holds.ts';

/** Both texts are written with the margin of the test's own code, which is taken away. */
export function expectLayout(typed: string, laidOut: string): void {
  expect(expectLayoutHolds(flush(typed))).toBe(flush(laidOut));
}

function flush(text: string): string {
  const lines = text.replace(/^\n/, '').replace(/\n *$/, '\n').split('\n');
  const margin = Math.min(...lines.filter((line) => line.trim() !== '').map((line) => line.search(/\S/)));
  return lines.map((line) => line.slice(margin)).join('\n');
}
