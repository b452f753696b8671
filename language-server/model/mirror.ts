/**
 * `reverse task`: the steps of a task turned round, last one first, each with the verb that undoes it. What
 * undoes nothing (cleaning, looking, measuring) has no mirror; what cannot be undone as it was (a part thrown
 * away, a one-time part) is told to the caller. Gives statements like the author's own, placed where the
 * `reverse` stands, so that they are carried out and written out like any others.
 */
import type { Action, Block, Ref, Reverse, Span, Statement } from '../../grammar/syntax/tree.ts';
import { verbNamed } from '../../grammar/tokens/verbs.ts';
import type { Model, Thing } from './model.ts';

export interface Mirrored {
  statements: Statement[];
  /** Things that cannot go back as they came off: thrown away, or of one use. */
  lost: { thing: Thing; action: Action }[];
}

export function mirror(task: Block | undefined, reverse: Reverse, model: Model): Mirrored {
  const lost: Mirrored['lost'] = [];
  const context: Context = {
    model,
    at: { start: reverse.start, end: reverse.end },
    except: new Set(reverse.except.map((ref) => ref.name.text)),
    comesOff: new Set(),
    undone: new Set(),
    lost,
  };
  collect(task, context.comesOff);
  return { statements: block(task, context), lost };
}

interface Context {
  model: Model;
  at: Span;
  except: ReadonlySet<string>;
  /** Fasteners that the task takes out: their loosening is no step of its own on the way back. */
  comesOff: Set<string>;
  /** Actions that are mirrored already. */
  undone: Set<string>;
  lost: Mirrored['lost'];
}

function collect(task: Block | undefined, into: Set<string>): void {
  for (const statement of task?.statements ?? []) {
    if (statement.kind === 'action') {
      if (statement.verb === 'remove') for (const ref of statement.objects) into.add(ref.name.text);
    } else if ('body' in statement) {
      collect(statement.body, into);
      if ('otherwise' in statement) collect(statement.otherwise, into);
    }
  }
}

function block(source: Block | undefined, context: Context): Statement[] {
  const result: Statement[] = [];
  for (const statement of [...(source?.statements ?? [])].reverse()) {
    switch (statement.kind) {
      case 'action':
        result.push(...action(statement, context));
        break;
      case 'task':
      case 'step':
      case 'hold':
      case 'repeat':
        result.push(...block(statement.body, context));
        break;
      case 'when':
      case 'if': {
        const body = block(statement.body, context);
        const otherwise = block(statement.otherwise, context);
        if (body.length + otherwise.length === 0) break;
        result.push({
          ...statement,
          ...context.at,
          body: { ...context.at, statements: body, closed: true },
          ...(otherwise.length > 0
            ? { otherwise: { ...context.at, statements: otherwise, closed: true } }
            : {}),
        } as Statement);
        break;
      }
      case 'for each': {
        const body = block(statement.body, context);
        if (body.length > 0)
          result.push({
            ...statement,
            ...context.at,
            body: { ...context.at, statements: body, closed: true },
          });
        break;
      }
      default:
        break;
    }
  }
  return result;
}

function action(source: Action, context: Context): Statement[] {
  const { model } = context;
  const objects = [...source.objects].reverse().filter((ref) => {
    // What the task does twice is undone once.
    const key = `${source.verb} ${ref.name.text} ${ref.positions.map(({ from, to }) => `${from}..${to ?? ''}`).join()}`;
    if (context.except.has(ref.name.text) || context.undone.has(key)) return false;
    context.undone.add(key);
    return true;
  });
  if (objects.length === 0) return [];
  if (source.verb === 'cap') return [];
  const tool = (ref: Ref) => model.byName.get(ref.name.text)?.type === 'tool';
  if (source.verb === 'fit' || source.verb === 'refit') {
    // A tool or fixture that was put on for the work comes off again; a part that was fitted is not undone.
    const tools = objects.filter(tool);
    return tools.length > 0 ? [turned(source, 'remove', tools, context)] : [];
  }
  if (source.verb === 'remove' && objects.some(tool)) {
    return [
      ...wrap(
        objects.filter((ref) => !tool(ref)),
        (rest) => turned(source, 'refit', rest, context),
      ),
      ...wrap(objects.filter(tool), (tools) => turned(source, 'fit', tools, context)),
    ];
  }
  const back = verbNamed(source.verb)?.undone;
  if (!back || !TURNED.has(source.verb)) return [];
  const thrown = source.tails.some((tail) => tail.tail === 'and discard');
  const left = objects.filter((ref) => {
    const thing = model.byName.get(ref.name.text);
    if (!thing) return false;
    if (source.verb === 'loosen' && context.comesOff.has(thing.name)) return false;
    if (!thrown && !(thing.singleUse && (source.verb === 'remove' || source.verb === 'unbolt'))) return true;
    context.lost.push({ thing, action: source });
    return false;
  });
  return wrap(left, (refs) => turned(source, back, refs, context));
}

/** Verbs whose opposite belongs into the mirror. */
const TURNED: ReadonlySet<string> = new Set([
  'remove',
  'unbolt',
  'move aside',
  'loosen',
  'disconnect',
  'open',
  'close',
  'switch on',
  'switch off',
  'lock out',
  'unlock',
  'isolate',
  'drain',
  'recover',
  'lock',
  'support',
  'raise',
  'bypass',
]);

function wrap(refs: Ref[], make: (refs: Ref[]) => Statement): Statement[] {
  return refs.length > 0 ? [make(refs)] : [];
}

function turned(source: Action, verb: string, objects: Ref[], context: Context): Action {
  return {
    kind: 'action',
    verb: verb === 'fill' ? 'fill' : verb,
    word: { text: verb, ...context.at },
    objects: objects.map((ref) => ({ ...ref, ...context.at })),
    together: source.together && objects.length > 1,
    tails: source.tails.filter(
      (tail) => tail.tail === 'with' && (verb === 'lock' || verb === 'support' || verb === 'raise'),
    ),
    outcomes: [],
    ...context.at,
  };
}
