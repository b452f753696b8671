/** A document as plain text: to read it through, and for terminals. Everything that is empty is said to be none. */
import { wordsOf } from '../words/words.ts';
import { type FlowItem, type Notice, type ProcedureDocument, plainText, type Step } from './types.ts';

/** The steps alone, one line a sentence. */
export function flowText(document: ProcedureDocument): string {
  const words = wordsOf(document.language === 'en-GB' ? 'british' : 'american');
  const lines: string[] = [];
  const put = (depth: number, line: string) => lines.push(`${'  '.repeat(depth)}${line}`);
  const notice = (depth: number, { word, hazards, text }: Notice) => {
    const what = hazards.map(({ label }) => label).join(', ');
    put(depth, `${word}${what === '' ? '' : ` (${what})`}: ${plainText(text)}`);
  };
  const step = (item: Step, depth: number) => {
    for (const one of item.notices) notice(depth, one);
    const when = item.when ? `[${item.when.sentence}] ` : '';
    put(depth, `${item.number}  ${when}${plainText(item.heading)}`);
    const { fastening } = item.detail;
    for (const one of fastening) {
      const name = fastening.length > 1 ? `${one.name}: ` : '';
      if (one.stages.length > 1)
        for (const stage of one.stages) put(depth + 2, `${name}stage ${stage.number}: ${stage.sentence}`);
      else if (one.stages[0] && one.stages[0].kind !== 'torque')
        put(depth + 2, name + one.stages[0].sentence);
      if (one.order) put(depth + 2, name + one.order.sentence);
      for (const wrench of one.wrenches) put(depth + 2, `${wrench.sentence} ${wrench.because ?? ''}`.trim());
    }
    for (const line of [...item.more, ...item.said]) put(depth + 2, plainText(line));
    for (const line of item.expect) put(depth + 2, `${words.say('label.expect')}: ${plainText(line)}`);
    for (const picture of item.pictures) put(depth + 2, `[${picture.file}: ${picture.alt}]`);
    for (const row of item.measurement?.rows ?? []) {
      put(depth + 2, `${row.reading}: ${row.meaningText}. ${row.action}`);
      walk(row.items, depth + 4);
    }
    for (const row of item.measurement?.table?.rows ?? []) put(depth + 2, `${row.reading}: ${row.gives}`);
  };
  const walk = (items: readonly FlowItem[], depth: number): void => {
    for (const item of items) {
      switch (item.kind) {
        case 'step':
          step(item, depth);
          break;
        case 'task':
          put(depth, '');
          put(depth, `${item.number}  ${item.title.toUpperCase()}`);
          walk(item.items, depth);
          break;
        case 'group':
          put(depth, `${item.number}  ${item.title.toUpperCase()} ${plainText(item.note)}`.trimEnd());
          walk(item.items, depth + 1);
          break;
        case 'branch':
          for (const way of item.ways) {
            if (way.goOn && item.ways.length > 1) continue;
            put(depth, way.label);
            walk(way.items, depth + 1);
          }
          break;
        case 'repeat':
          put(depth, `${item.number}  ${item.sentence}`);
          walk(item.items, depth + 1);
          if (item.otherwise) {
            put(depth + 1, item.otherwise.sentence);
            walk(item.otherwise.items, depth + 2);
          }
          break;
        case 'hold':
          put(depth, plainText(item.text));
          walk(item.items, depth + 1);
          break;
        case 'choice':
          put(depth, item.sentence);
          break;
        case 'stop':
          put(depth, plainText(item.text));
          break;
        case 'note':
          notice(depth, item.notice);
          break;
      }
    }
  };
  walk(document.flow, 0);
  return `${lines.join('\n')}\n`;
}
