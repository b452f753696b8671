/**
 * Changes for what is left undone at the end: the step that undoes it, where it fits in the order of going back.
 */
import type { Edit } from '../../grammar/format/format.ts';
import type { Changes, Context } from './mend-context.ts';
import { first, insertAtAll } from './mend-moves.ts';
import { after } from './mend-outline.ts';
import { backOf, sitesToPutBack } from './mend-sites.ts';
import { type Named, type NewSteps, namedIn, newStep, puttingBack, undoing } from './mend-steps.ts';

export function* left(context: Context): Changes {
  const { subject, action, outline, spot, text } = context;
  if (!subject) return;
  // Left out of a `reverse` by name.
  for (const { statement } of outline.spots) {
    if (statement.kind !== 'reverse') continue;
    const index = statement.except.findIndex((ref) => ref.name.text === subject.thing.name);
    if (index >= 0)
      yield [exceptionCut(text, statement.except, index, statement.task?.end ?? statement.start)];
  }
  const ways = ending(context, subject);
  if (action && subject.thing.type === 'fastener' && (action.verb === 'fit' || action.verb === 'tighten'))
    yield* insertAtAll(context, ways, [after(spot)]);
  yield* insertAtAll(context, ways, sitesToPutBack(outline, spot).slice(0, 16));
}

/** What the heading says of the end and no step makes so. */
export function* contractBroken(context: Context): Changes {
  const { text, finding, subject, outline, spot, action } = context;
  if (!subject || action || spot.statement.start <= finding.start) return;
  const state = text.slice(finding.start, finding.end).split(/\s+/).at(-1) ?? '';
  const ways = (MAKING[state] ?? []).map((verb) => [newStep(verb, subject)]);
  yield* insertAtAll(context, ways, sitesToPutBack(outline, spot).slice(0, 12), false);
}

/** State words and the verbs that make things so. */
const MAKING: Readonly<Record<string, readonly string[]>> = {
  off: ['remove', 'unbolt', 'switch off'],
  out: ['remove'],
  loose: ['loosen'],
  aside: ['move aside'],
  disconnected: ['disconnect'],
  open: ['open'],
  closed: ['close'],
  on: ['switch on'],
  locked: ['lock out', 'lock'],
  isolated: ['isolate'],
  relieved: ['relieve'],
  cool: ['let cool'],
  drained: ['drain'],
  supported: ['support'],
  marked: ['mark'],
  clean: ['clean'],
};

/** The steps that end what the finding says is left. */
function ending({ about, action, model, outline }: Context, subject: Named): NewSteps[] {
  const one = (verb: string) => [newStep(verb, subject)];
  const undone = action ? undoing(action, subject, model, outline) : puttingBack(subject, model, outline);
  switch (about.check) {
    case 'left-drained':
      return [one('fill'), one('top up')];
    case 'left-isolated': {
      const isolator =
        action &&
        namedIn(
          model,
          action.objects.map((ref) => ref.name.text),
        )[0];
      const own =
        action && isolator && action.verb !== 'isolate' ? undoing(action, isolator, model, outline) : [];
      return [...own, one('restore')];
    }
    case 'left-locked':
      return [one('unlock')];
    case 'left-supported':
      return [one('lower')];
    case 'left-open':
      return action ? undone : [one('close'), one('open'), one('switch on')];
    case 'left-loose':
      return action ? undone : [one('tighten')];
    case 'left-aside':
      return [one('move back')];
    case 'fixture-left-on':
      return [one('remove')];
    default:
      return undone;
  }
}

function exceptionCut(
  text: string,
  except: readonly { start: number; end: number }[],
  index: number,
  behind: number,
): Edit {
  const own = except[index]!;
  const next = except[index + 1];
  const last = except[index - 1];
  if (next) return { start: own.start, end: next.start, text: '' };
  return { start: last?.end ?? behind, end: text.startsWith(',', own.end) ? own.end + 1 : own.end, text: '' };
}

export function* openedFull(context: Context): Changes {
  const { subject, action } = context;
  if (!subject) return;
  if (action?.verb === 'evacuate') {
    yield* first(context, subject, (one) => [[newStep('recover', one)], [newStep('drain', one)]]);
    return;
  }
  yield* later(context, (one) => [[newStep('top up', one)]]);
  yield* first(context, subject, (one) => [[newStep('drain', one)]]);
}

/** After the step or, in the order of going back, later. */
export function* later(context: Context, ways: (one: Named) => NewSteps[]): Changes {
  const { subject, outline, spot } = context;
  if (!subject) return;
  const back = backOf(outline, subject.thing.name, spot.order - 1);
  const sites = [...(back ? [after(back.last)] : []), ...sitesToPutBack(outline, spot), after(spot)];
  yield* insertAtAll(context, ways(subject), sites.slice(0, 20), true);
}
