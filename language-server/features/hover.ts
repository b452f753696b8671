/** What a reader wants to know of the thing under the pointer: what it is, and how it stands at this step. */
import { printBoth, printReader, readQuantity, unitNamed } from '../../grammar/quantity/index.ts';
import type { Quantity } from '../../grammar/syntax/tree.ts';
import { wrenchSettings } from '../model/fastening-tools.ts';
import { visited } from '../model/flow-walk.ts';
import type { Thing } from '../model/model.ts';
import { list } from '../model/model.ts';
import type { SourceHost } from '../project/project.ts';
import { thingAt } from './place.ts';
import { stateAt } from './state-at.ts';

export interface Hover {
  start: number;
  end: number;
  /** Markdown. */
  text: string;
}

export function hoverAt(host: SourceHost, path: string, offset: number): Hover | undefined {
  const meant = thingAt(host, path, offset);
  if (!meant) return undefined;
  const { thing, model, name, procedure } = meant;
  const source = host.read(thing.place.file) ?? '';
  const rows = [`**${thing.title}** · ${thing.type}${thing.count ? ` ×${thing.count}` : ''}`];
  const titles = (items: readonly number[]) =>
    list([...new Set(items.map((item) => model.thingOf[item]!.title))]);
  const say = (words: string, lists: readonly (readonly number[])[]) => {
    const items = thing.positions.flatMap((_, index) => lists[thing.first + index] ?? []);
    if (items.length > 0) rows.push(`${words} ${titles(items)}`);
  };
  say('on', model.seats);
  say('held by', model.heldBy);
  say('sealed by', model.seals);
  say('under', model.covers);
  say('opens', model.opens);
  if (thing.type === 'fastener') say('holds', model.members);
  const torque = torqueWords(thing, source);
  if (torque) rows.push(`tightened to ${torque}`);
  if (procedure) {
    const step = visited(procedure.body).find(
      ({ statement }) =>
        statement.kind === 'action' && statement.objects.some((ref) => ref.name.start === name.start),
    )?.statement;
    if (step?.kind === 'action')
      for (const { adapter, torque, setting } of wrenchSettings(model, step, thing))
        rows.push(
          `with the ${adapter.title} in line, set the wrench to ${setting} for ${printReader(torque)}`,
        );
  }
  if (thing.singleUse) rows.push('for one use only');
  if (procedure) {
    const states =
      stateAt(host, path, offset)?.groups.filter((group) =>
        group.things.some((one) => one.name === thing.name),
      ) ?? [];
    rows.push(
      states.length > 0
        ? `before this step: ${list(states.map((group) => group.state))}`
        : 'before this step: as at the start',
    );
  }
  return { start: name.start, end: name.end, text: rows.join('  \n') };
}

/** A torque in its own unit and in the other system's. */
function torqueWords(thing: Thing, source: string): string | undefined {
  const quantities: Quantity[] = thing.torque
    ? [thing.torque]
    : thing.stages.flatMap((stage) => ('quantity' in stage && stage.quantity ? [stage.quantity] : []));
  const words = quantities.flatMap((quantity) => {
    const read = readQuantity(source.slice(quantity.start, quantity.end));
    if (!read.ok) return [];
    const partner = read.value.unit.partner === undefined ? undefined : unitNamed(read.value.unit.partner);
    const both = partner && printBoth(read.value, partner);
    return [both?.ok ? both.value : printReader(read.value)];
  });
  return words.length > 0 ? words.join(', then ') : undefined;
}
