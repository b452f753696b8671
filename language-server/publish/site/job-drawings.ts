/**
 * The drawings of one procedure: tightening orders at their steps, and the chart of what comes off and goes back, made
 * from one run of the procedure. Numbers in the chart are those that the page prints.
 */
import { execute } from '../../execution/execute.ts';
import { buildModel } from '../../model/build.ts';
import { findMachine, type Loader } from '../../model/names.ts';
import { linesOf } from '../../report/positions.ts';
import type { FlowItem, ProcedureDocument, Step } from '../document/types.ts';
import { chartOf } from '../drawings/bars.ts';
import { chart } from '../drawings/chart.ts';
import type { ChartTask } from '../drawings/chart-rows.ts';
import { orderDrawing } from '../drawings/order.ts';
import { pictureOfStep } from '../drawings/order-pictures.ts';
import type { Drawing } from '../drawings/svg.ts';
import { anchor, type PageDrawings } from '../page/context.ts';
import { drawn } from '../page/drawn.ts';
import type { Html } from '../page/html.ts';
import { pageWords } from '../words/page-words.ts';

/** Bars of a chart with fewer than these tell nothing that the steps do not. */
const FEWEST_BARS = 3;

export function jobDrawings(doc: ProcedureDocument, loader: Loader, path: string): PageDrawings {
  const words = pageWords(doc.language);
  const steps = stepsOf(doc.flow);
  const orders = new Map<string, Html[]>();
  // The same order is drawn where it is worked first; further stages of it say it in words.
  const shown = new Set<string>();
  for (const step of steps) {
    const drawings = step.detail.fastening.flatMap((fastening, at) => {
      const picture = pictureOfStep(fastening);
      const key = JSON.stringify([picture?.thing, picture?.sequence]);
      if (!picture || shown.has(key)) return [];
      shown.add(key);
      const drawing = orderDrawing(picture, {
        prefix: `order-${anchor(step.id)}-${at}`,
        step: step.id,
        captionApart: true,
      });
      return drawing ? [drawn(drawing, words.inWords)] : [];
    });
    if (drawings.length > 0) orders.set(step.id, drawings);
  }
  const overall = chartDrawing(doc, steps, loader, path);
  return {
    page: overall ? [{ title: words.chart, drawing: drawn(overall, words.inWords) }] : [],
    step: (id) => orders.get(id) ?? [],
  };
}

/** The chart of a procedure, with the numbers of its page; undefined where it would tell nothing. */
export function chartDrawing(
  doc: ProcedureDocument,
  steps: readonly Step[],
  loader: Loader,
  path: string,
  foot?: string,
): Drawing | undefined {
  const file = loader.load(path);
  const procedure = file?.procedures.find(({ name }) => name?.text === doc.id);
  if (!file || !procedure?.body) return undefined;
  const visible = loader.visible(file);
  const found = findMachine(visible, doc.machine.id);
  if (!found) return undefined;
  const { model } = buildModel(found.machine, found.file, loader.visible(found.file));
  const execution = execute(model, procedure, path, visible, {}, undefined, true);
  const numbers = new Map<string, string>();
  for (const { source, number } of steps) {
    const key = `${source.file}:${source.line}`;
    if (!numbers.has(key)) numbers.set(key, number);
  }
  const lines = new Map(visible.map(({ path: name, text }) => [name, linesOf(text)]));
  const data = chartOf(model, execution, ({ at }) => {
    const line = lines.get(at.file)?.at(at.start).line;
    return line === undefined ? undefined : numbers.get(`${at.file}:${line + 1}`);
  });
  if (data.bars.length < FEWEST_BARS) return undefined;
  const ids = new Map(steps.map(({ number, id }) => [number, id]));
  const labels = new Map(data.steps.map(({ number, label }) => [number, label]));
  return chart(data, {
    prefix: 'chart',
    name: doc.title,
    tasks: tasksOf(doc, data.steps),
    idOf: (number) => ids.get(labels.get(number) ?? ''),
    ...(foot === undefined ? {} : { foot }),
  });
}

/** Each task from its first to its last step in the chart. */
function tasksOf(doc: ProcedureDocument, steps: readonly { number: number; label?: string }[]): ChartTask[] {
  return doc.flow.flatMap((item) => {
    if (item.kind !== 'task') return [];
    const own = steps.filter(({ label }) => label?.split('.')[0] === item.number).map(({ number }) => number);
    if (own.length === 0) return [];
    return [{ number: item.number, title: item.title, from: Math.min(...own), to: Math.max(...own) }];
  });
}

/** Every step, in the order of the page. */
export function stepsOf(items: readonly FlowItem[]): Step[] {
  return items.flatMap((item) => {
    if (item.kind === 'step')
      return [item, ...(item.measurement?.rows.flatMap((row) => stepsOf(row.items)) ?? [])];
    if (item.kind === 'branch') return item.ways.flatMap((way) => stepsOf(way.items));
    if (!('items' in item)) return [];
    return [
      ...stepsOf(item.items),
      ...(item.kind === 'repeat' && item.otherwise ? stepsOf(item.otherwise.items) : []),
    ];
  });
}
