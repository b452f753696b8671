/** Notices left out, moved behind the next step, weakened, muted, or cut short. */
import type { Block, Notice } from '../../grammar/syntax/tree.ts';
import { lineAt, lists, replaced, saidAt } from './seed-items.ts';
import type { Seed, SeedKind } from './seeds.ts';

const MILDER: Readonly<Record<string, string>> = { danger: 'caution', warning: 'notice', caution: 'note' };

export function noticeSeeds(source: string, body: Block): Seed[] {
  const found: Seed[] = [];
  for (const list of lists(body)) {
    for (const [index, one] of list.entries()) {
      if (one.kind !== 'notice' || one.signal === 'note') continue;
      const add = (kind: SeedKind, text: string) =>
        found.push({ kind, line: lineAt(source, one.start), what: saidAt(source, one), text });
      add('notice left out', replaced(source, one, ''));
      const next = list.slice(index + 1).find((other) => other.kind === 'action');
      if (next) {
        const own = source.slice(one.start, one.end);
        const moved = replaced(source, { start: next.end, end: next.end }, `\n${own}`);
        add('notice moved behind its step', replaced(moved, one, ''));
      }
      const milder = MILDER[one.signal];
      if (milder) add('notice weakened by two words', replaced(source, one.word, milder));
      add('notice muted to a note', muted(source, one));
      const [first] = one.hazards;
      const last = one.hazards.at(-1);
      if (first && last)
        add('hazard word left out', replaced(source, { start: first.start, end: last.end }, ''));
      const shorter = withoutLastSentence(source, one);
      if (shorter !== undefined) add('avoidance left out', shorter);
    }
  }
  return found;
}

function muted(source: string, notice: Notice): string {
  return replaced(source, notice.word, 'note');
}

/** The last sentence of a notice is how to avoid it, where there are several. */
function withoutLastSentence(source: string, { text }: Notice): string | undefined {
  const sentences = text?.value.split(/(?<=\.)\s+/) ?? [];
  if (!text || sentences.length < 2 || text.value.includes('"')) return undefined;
  return replaced(source, text, `"${sentences.slice(0, -1).join(' ')}"`);
}
