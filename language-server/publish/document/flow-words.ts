/** What a piece of the flow comes to in words: its sentences, where it ends, what an outcome with it means. */
import { type FlowItem, type OutcomeRow, plainText, type Step } from './types.ts';

/** The work ends there, whatever way it goes. */
export function endsInStop(items: readonly FlowItem[]): boolean {
  const last = items.at(-1);
  if (last?.kind === 'stop') return true;
  return last !== undefined && 'items' in last && last.kind !== 'repeat' && endsInStop(last.items);
}

export function firstStep(items: readonly FlowItem[]): Step | undefined {
  return items.find((item): item is Step => item.kind === 'step');
}

/** Words by which authors say that nothing is wrong. */
export const GOOD: ReadonlySet<string> = new Set(
  'sound right dry tight good ok fine clean clear free smooth correct straight even intact yes'.split(' '),
);

export function meaningOf(
  items: readonly FlowItem[],
  stops: boolean,
  word: string | undefined,
  anyRight: boolean,
): OutcomeRow['meaning'] {
  if (stops) return 'stop';
  if (items.length === 0 || GOOD.has(word ?? '')) return 'right';
  return anyRight ? 'not right' : 'act';
}

/** What is done, in sentences: headings and stops, with what is in groups. */
export function sentencesIn(items: readonly FlowItem[]): string[] {
  return items.flatMap((item): string[] => {
    switch (item.kind) {
      case 'step':
        return [
          plainText(item.heading),
          ...(ONLY_SAID.has(item.detail.verb) ? item.said.map(plainText) : []),
        ];
      case 'stop':
        return [plainText(item.text)];
      case 'note':
        return [plainText(item.notice.text)];
      case 'choice':
        return [item.sentence];
      case 'branch':
        return item.ways.flatMap((way) => sentencesIn(way.items));
      default:
        return sentencesIn(item.items);
    }
  });
}

/** Verbs whose heading tells little without what the author says. */
const ONLY_SAID: ReadonlySet<string> = new Set(['choose', 'adjust']);

/** More than so many sentences are not told in a cell of a table. */
const SHORT = 3;

export function shortly(items: readonly FlowItem[]): string {
  const all = sentencesIn(items);
  return all.length <= SHORT ? all.join(' ') : `${all.slice(0, SHORT - 1).join(' ')} …`;
}
