/** Every right demo procedure as a document, for tests of what is made from documents. */
import { documentsOf } from '../../../language-server/publish/document/build.ts';
import type { FlowItem, ProcedureDocument, Step } from '../../../language-server/publish/document/types.ts';
import { hostOf, TEXTS } from './drawings/demos.ts';

export const DOCUMENTS: readonly ProcedureDocument[] = Object.keys(TEXTS).flatMap((path) =>
  documentsOf(hostOf(TEXTS), path),
);

/** Documents of one text that holds its own machine. */
export function documentsIn(text: string): ProcedureDocument[] {
  return documentsOf(hostOf({ 'j.dowel': text }), 'j.dowel');
}

/** Every step, wherever it stands. */
export function stepsOf(items: readonly FlowItem[]): Step[] {
  return items.flatMap((item): Step[] => {
    switch (item.kind) {
      case 'step':
        return [item, ...stepsOf(item.measurement?.rows.flatMap((row) => row.items) ?? [])];
      case 'branch':
        return item.ways.flatMap((way) => stepsOf(way.items));
      case 'repeat':
        return [...stepsOf(item.items), ...stepsOf(item.otherwise?.items ?? [])];
      case 'task':
      case 'group':
      case 'hold':
        return stepsOf(item.items);
      default:
        return [];
    }
  });
}
