/** What is different between the notices that stand before a step: lost, weakened, new, worded otherwise. */
import type { Change } from './change.ts';
import type { ComparedNotice, ComparedStep } from './steps.ts';

/** From the mildest to the gravest: as ANSI Z535.6 and ISO 3864-2 rank their signal words. */
const RANK: Readonly<Record<ComparedNotice['signal'], number>> = {
  note: 0,
  notice: 1,
  caution: 2,
  warning: 3,
  danger: 4,
};

/** Undefined stands for a step that is not there: its notices go or come with it. */
export function noticeChanges(from: ComparedStep | undefined, to: ComparedStep | undefined): Change[] {
  const left = [...(from?.notices ?? [])];
  const changes: Change[] = [];
  const step = `\`${(to ?? from)!.typed}\``;
  for (const notice of to?.notices ?? []) {
    const at = nearest(left, notice);
    if (at < 0) {
      const message = `${nameOf(notice)} before ${step} is new.`;
      changes.push({ kind: 'strengthened', what: 'notice', message, after: shown(notice), meaning: true });
      continue;
    }
    changes.push(...between(left.splice(at, 1)[0]!, notice, step));
  }
  for (const notice of left) {
    const message = `${nameOf(notice)} before ${step} is gone.`;
    changes.push({ kind: 'weakened', what: 'notice', message, before: shown(notice), meaning: true });
  }
  return changes;
}

/** The notice that this one was: the same words, else one that names the same hazard, else the only one. */
function nearest(left: readonly ComparedNotice[], notice: ComparedNotice): number {
  const same = left.findIndex(({ words }) => words === notice.words);
  if (same >= 0) return same;
  return left.findIndex(({ hazards, signal }) =>
    notice.hazards.length > 0
      ? hazards.some((hazard) => notice.hazards.includes(hazard))
      : hazards.length === 0 && signal === notice.signal,
  );
}

function between(from: ComparedNotice, to: ComparedNotice, step: string): Change[] {
  const lost = from.hazards.filter((hazard) => !to.hazards.includes(hazard));
  const more = to.hazards.filter((hazard) => !from.hazards.includes(hazard));
  const rank = RANK[to.signal] - RANK[from.signal];
  const texts = { before: shown(from), after: shown(to) };
  if (rank !== 0 || lost.length > 0 || more.length > 0) {
    const kind = rank < 0 || lost.length > 0 ? 'weakened' : 'strengthened';
    const message = `${nameOf(from)} before ${step} is now ${nameOf(to)}.`;
    return [{ kind, what: 'notice', message, ...texts, meaning: true }];
  }
  if (from.words === to.words) return [];
  const message = `${nameOf(to)} before ${step} is worded otherwise.`;
  return [{ kind: 'reworded', what: 'notice', message, ...texts, meaning: false }];
}

function nameOf({ signal, hazards }: ComparedNotice): string {
  return `\`${[signal, hazards.join(', ')].filter((one) => one !== '').join(' ')}\``;
}

function shown({ signal, hazards, words }: ComparedNotice): string {
  return [signal, hazards.join(', '), `"${words}"`].filter((one) => one !== '').join(' ');
}
