/**
 * `dowel compare OLD NEW`: what is different in meaning, not in text. Exit code 0 where nothing means anything else, 1
 * where something does, 2 where one of the two cannot be had.
 */
import { compareProjects, type State } from '../compare/compare.ts';
import { comparisonText } from '../compare/text.ts';
import { DEFERENCE } from '../report/deference.ts';
import { lineStore } from '../report/frame.ts';
import { complain, type ExitCode, print, printRaw } from './output.ts';
import { stateOf } from './revisions.ts';

export interface CompareOptions {
  format: 'text' | 'json' | 'html';
}

export async function compare(
  old: string,
  now: string,
  only: readonly string[],
  { format }: CompareOptions,
): Promise<ExitCode> {
  const states = [old, now].map((one) => ({ one, state: stateOf(one, only) }));
  for (const { one, state } of states)
    if ('reason' in state) complain(`cannot compare ${one}: ${state.reason}. ${state.remedy}`);
  const [before, after] = states.map(({ state }) => state);
  if (!isState(before) || !isState(after)) return 2;
  const comparison = compareProjects(before, after);
  const lines = {
    old: lineStore((file) => before.host.read(file)),
    now: lineStore((file) => after.host.read(file)),
  };
  if (format === 'json')
    print(JSON.stringify({ schema: 1, caution: DEFERENCE, old, new: now, ...comparison }, null, 2));
  else if (format === 'html')
    printRaw((await import('../compare/page.ts')).comparisonPage(comparison, { old, now, lines }));
  else printRaw(comparisonText(comparison, lines));
  return comparison.meaning ? 1 : 0;
}

function isState(one: ReturnType<typeof stateOf> | undefined): one is State {
  return one !== undefined && 'host' in one;
}
