/** What the page's script works with: which things each step moves, and the words it says. Plain data. */
import type { FlowItem, ProcedureDocument, ThingChange } from '../../document/types.ts';
import type { PageWords, WorkWords } from '../../words/page-words.ts';

export interface WorkData {
  /** Ticks of one issue never show in another. */
  key: string;
  words: WorkWords;
  /** By id of the step: number, and for each change the thing, what happens, and the positions (none: all). */
  steps: { [id: string]: { number: string; changes: [string, ThingChange['change'], string[]][] } };
  things: { [id: string]: { name: string; positions: string[] } };
  /** Left off on purpose: not counted as left over. */
  leftOver: string[];
  /** For each class of what is there on some machines only: the choices that decide about it. */
  decidedBy: { [className: string]: string[] };
}

export function workData(
  doc: ProcedureDocument,
  words: PageWords,
  decidedBy: WorkData['decidedBy'],
): WorkData {
  const steps: WorkData['steps'] = {};
  const things: WorkData['things'] = {};
  const visit = (items: readonly FlowItem[]): void => {
    for (const item of items) {
      if (item.kind === 'step') {
        steps[item.id] = {
          number: item.number,
          changes: item.changes.map(({ id, change, positions }) => [id, change, positions]),
        };
        for (const { id, name } of item.changes)
          things[id] = { name: doc.things[id]?.name ?? name, positions: doc.things[id]?.positions ?? [] };
        for (const row of item.measurement?.rows ?? []) visit(row.items);
      } else if (item.kind === 'branch') for (const way of item.ways) visit(way.items);
      else if ('items' in item) {
        visit(item.items);
        if (item.kind === 'repeat' && item.otherwise) visit(item.otherwise.items);
      }
    }
  };
  visit(doc.flow);
  return {
    key: `dowel ${doc.number ?? doc.id} ${doc.issue ?? ''}`,
    words: words.work,
    steps,
    things,
    leftOver: doc.leftAtEnd.map(({ id }) => id),
    decidedBy,
  };
}
