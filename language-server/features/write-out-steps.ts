/**
 * Writes out the steps of one procedure: walks the tree as the execution does and gives the changes to the author's
 * text. Knows which values the loops give their variables and which text is whose; never changes what it has not
 * been asked to write out.
 */
import type {
  Action,
  Block,
  Condition,
  ForEach,
  Position,
  Procedure,
  Ref,
  Span,
  Statement,
  Task,
  Text,
} from '../../grammar/syntax/tree.ts';
import { visited } from '../model/flow-walk.ts';
import { itemsOf } from '../model/items.ts';
import { mirror } from '../model/mirror.ts';
import type { Model } from '../model/model.ts';
import { findProcedure, type LoadedFile } from '../model/names.ts';
import { tasksOf } from '../model/row.ts';
import { type Edit, inPlaceOf, spliced } from './write-out-edits.ts';

export interface Found {
  procedure: Procedure;
  file: LoadedFile;
}

/** Where a statement is being written out from, and what holds there. */
interface Scene {
  file: LoadedFile;
  tasks: ReadonlyMap<string, Task>;
  /** Values of loop variables, innermost last. */
  bound: ReadonlyMap<string, string>;
  /** Which rounds of which loops: what is seen is asked anew in each. */
  rounds: string;
  /** The repeats around the place in the written-out text. */
  repeats: string;
  /** Names of the tasks and procedures that the place is in: what uses one of them leads back to itself. */
  doing: readonly string[];
  /** The place is written in somewhere else than where it stands. */
  copied: boolean;
}

/** Characters of written-out text after which short forms stay as they are: loops in loops multiply. */
const MOST_WRITTEN = 4_000_000;
/** Steps of a `for each` that are written out at the most. */
const MOST_EACH = 500;
/** Procedures within procedures. */
const MOST_USES = 50;

export class StepWriter {
  /** The procedures that were written into this one, each once. */
  readonly used: Found[] = [];
  private readonly model: Model | undefined;
  private readonly visible: readonly LoadedFile[];
  private readonly from: Found;
  private written = 0;
  /** Choices and values by where they are declared, with their text: a second copy would declare them again. */
  private readonly declared = new Map<string, string>();
  /** The words of each finding, and the finding that has the words. */
  private readonly words = new Map<string, string>();
  private readonly taken = new Map<string, string>();

  constructor(model: Model | undefined, visible: readonly LoadedFile[], from: Found) {
    this.model = model;
    this.visible = visible;
    this.from = from;
  }

  /** The changes to the text of the procedure's file. */
  edits(): Edit[] {
    const { procedure, file } = this.from;
    const tasks = tasksOf(procedure);
    const scene = { file, tasks, bound: new Map(), rounds: '', repeats: '', doing: [], copied: false };
    return this.within(procedure.body, scene);
  }

  /** The changes inside a piece of the tree: statements that are written out, names that are bound. */
  private within(node: unknown, scene: Scene): Edit[] {
    if (Array.isArray(node)) return node.flatMap((one) => this.within(one, scene));
    if (typeof node !== 'object' || node === null) return [];
    if ('statements' in node) return (node as Block).statements.flatMap((one) => this.statement(one, scene));
    if ('holes' in node) return holes(node as Text, scene);
    if ('positions' in node && 'name' in node) return refEdits(node as Ref, scene);
    return Object.values(node).flatMap((one) => this.within(one, scene));
  }

  private statement(statement: Statement, scene: Scene): Edit[] {
    switch (statement.kind) {
      case 'for each':
        return this.instead(statement, statement.body, scene, () => this.each(statement, scene));
      case 'do':
        return this.instead(statement, undefined, scene, () => this.use(statement.ref?.text, scene));
      case 'reverse':
        return this.instead(statement, undefined, scene, () => this.mirrored(statement, scene));
      case 'task':
        return this.task(statement, scene);
      case 'if':
      case 'when':
        return [
          ...this.asked(statement.condition, scene),
          ...this.within([statement.body, statement.otherwise], scene),
        ];
      case 'repeat': {
        const rounds = `${scene.rounds}/${statement.start}`;
        const inner = { ...scene, rounds, repeats: `${scene.repeats}/${rounds}` };
        return [
          ...this.within([statement.until, statement.otherwise], scene),
          ...this.within(statement.body, inner),
        ];
      }
      case 'choice':
      case 'value':
        return this.declaration(statement, scene);
      default:
        return Object.values(statement).flatMap((part) => this.within(part, scene));
    }
  }

  /** What `write` gives in the place of the statement; the statement stays where that is nothing. */
  private instead(
    statement: Statement,
    body: Block | undefined,
    scene: Scene,
    write: () => string | undefined,
  ): Edit[] {
    if (this.written > MOST_WRITTEN) return [];
    const written = write();
    if (written === undefined) return this.within(Object.values(statement), scene);
    const { text, parsed } = scene.file;
    const inside = ({ start, end }: Span, at: number) => start <= at && at < end;
    const comments = parsed.comments.filter(
      ({ start }) => inside(statement, start) && !(body && inside(body, start)),
    );
    return [inPlaceOf(text, statement, written, comments)];
  }

  /** What stands between the braces of a block. */
  private contents(block: Block, scene: Scene): string {
    const start = block.start + 1;
    const end = block.closed ? block.end - 1 : block.end;
    const text = spliced(scene.file.text, { start, end }, this.within(block, scene));
    this.written += text.length;
    return text.trim();
  }

  // ------------------------------------------------------------ the three short forms

  private each(statement: ForEach, scene: Scene): string | undefined {
    const { variable, over, body } = statement;
    if (!variable || !over || !body) return undefined;
    const values = this.valuesOf(over, scene);
    if (values === undefined) return undefined;
    return values.map((value) => this.contents(body, round(statement, value, scene))).join('\n');
  }

  private valuesOf(over: NonNullable<ForEach['over']>, scene: Scene): string[] | undefined {
    switch (over.kind) {
      case 'numbers': {
        const count = Math.max(over.to - over.from + 1, 0);
        if (count > MOST_EACH) return undefined;
        return Array.from({ length: count }, (_, index) => String(over.from + index));
      }
      case 'names':
        return over.names.map(({ text }) => text);
      case 'positions': {
        const { text } = over.ref.name;
        const thing = this.model?.byName.get(scene.bound.get(text) ?? text);
        return thing && itemsOf(thing, over.ref).items.map((item) => thing.positions[item - thing.first]!);
      }
    }
  }

  private use(name: string | undefined, scene: Scene): string | undefined {
    const { doing } = scene;
    // What leads back to itself has no end to be written.
    if (name === undefined || doing.includes(name) || doing.length > MOST_USES) return undefined;
    const inner = { ...scene, doing: [...doing, name], copied: true };
    const task = scene.tasks.get(name);
    if (task?.body) return stepOf(titleOf(task, name, scene.file), this.contents(task.body, inner));
    const found = task ? undefined : findProcedure(this.visible, name);
    if (!found?.procedure.body) return undefined;
    if (!this.used.some(({ procedure }) => procedure === found.procedure)) this.used.push(found);
    const { procedure, file } = found;
    const there = { ...inner, file, tasks: tasksOf(procedure) };
    return stepOf(titleOf(procedure, name, file), this.contents(found.procedure.body, there));
  }

  private mirrored(statement: Extract<Statement, { kind: 'reverse' }>, scene: Scene): string | undefined {
    const task = statement.task && scene.tasks.get(statement.task.text);
    if (!task?.body || !this.model) return undefined;
    const { statements, lost } = mirror(task.body, statement, this.model);
    const lines = lost.map(
      ({ thing }) =>
        `// ${thing.title}: ${thing.singleUse ? 'of one use only' : 'thrown away'}, so it does not go back. Fit a new one.`,
    );
    for (const { statement: inner } of visited(task.body)) {
      if (inner.kind !== 'do' && inner.kind !== 'reverse') continue;
      lines.push(`// Not turned round: ${oneLine(scene.file.text.slice(inner.start, inner.end))}`);
    }
    for (const one of statements) lines.push(this.print(one, scene));
    const text = lines.join('\n');
    this.written += text.length;
    return text || `// Nothing in ${task.name?.text ?? 'the task'} can be turned round.`;
  }

  // ------------------------------------------------------------ mirrored statements, which nobody has typed

  private print(statement: Statement, scene: Scene): string {
    const block = (body: Block | undefined, inner = scene) =>
      (body?.statements ?? []).map((one) => this.print(one, inner)).join('\n');
    switch (statement.kind) {
      case 'action':
        return this.printAction(statement, scene);
      case 'when':
      case 'if': {
        const { condition, body, otherwise } = statement;
        const asked = condition ? spliced(scene.file.text, condition, this.asked(condition, scene)) : '';
        const rest = otherwise ? ` otherwise {\n${block(otherwise)}\n}` : '';
        return `${statement.kind} ${asked} {\n${block(body)}\n}${rest}`;
      }
      case 'for each':
        return (this.valuesOf(statement.over!, scene) ?? [])
          .map((value) => block(statement.body, round(statement, value, scene)))
          .join('\n');
      default:
        return spliced(scene.file.text, statement, []);
    }
  }

  private printAction({ verb, objects, together, tails }: Action, scene: Scene): string {
    const names = objects.map((ref) => refText(ref, scene));
    const last = names.pop() ?? '';
    const list = names.length > 0 ? `${names.join(', ')}${together ? ' and ' : ', '}${last}` : last;
    const rest = tails.map(
      (tail) => ` ${spliced(scene.file.text, tail, this.within(Object.values(tail), scene))}`,
    );
    return `${verb} ${list}${rest.join('')}`;
  }

  // ------------------------------------------------------------ what a copy must not say twice

  /** A task that is written in somewhere else is a step there: its name is taken. */
  private task(task: Task, scene: Scene): Edit[] {
    const name = task.name?.text;
    const inner = name === undefined ? scene : { ...scene, doing: [...scene.doing, name] };
    const edits = [...this.within(task.title, scene), ...this.within(task.body, inner)];
    if (!scene.copied) return edits;
    const title = task.title ? '' : ` ${quoted(name ?? '')}`;
    const end = task.name?.end ?? task.start + 'task'.length;
    return [{ start: task.start, end, text: `step${title}` }, ...edits];
  }

  /** A choice or value is declared once; where a copy of it is another value, that is written down. */
  private declaration(statement: Extract<Statement, { kind: 'choice' | 'value' }>, scene: Scene): Edit[] {
    const edits = Object.values(statement).flatMap((part) => this.within(part, scene));
    const { start, end } = statement;
    const text = spliced(scene.file.text, statement, edits);
    const key = `${scene.file.path} ${start}`;
    const before = this.declared.get(key);
    this.declared.set(key, text);
    if (before === undefined) return edits;
    if (statement.kind === 'choice' || before === text) return [{ start, end, text: '' }];
    const { name, expression } = statement;
    if (!name || !expression) return edits;
    const value = spliced(scene.file.text, expression, this.within(expression, scene));
    return [{ start, end, text: `record ${name.text} = ${value}` }];
  }

  /** The same words mean the same finding, asked once: each round of a loop gets words of its own. */
  private asked(condition: Condition | undefined, scene: Scene): Edit[] {
    if (condition?.kind === 'and') return condition.parts.flatMap((part) => this.asked(part, scene));
    if (condition?.kind !== 'seen') return condition ? this.within(Object.values(condition), scene) : [];
    const { text } = condition;
    const edits = holes(text, scene);
    const finding = `${scene.file.path} ${scene.rounds} ${text.value}`;
    const suffix = this.suffix(text, edits.length > 0, finding, scene);
    // Behind the last word, before the closing quotation mark.
    if (suffix !== '') edits.push({ start: text.end - 1, end: text.end - 1, text: suffix });
    return edits;
  }

  private suffix(text: Text, hasValue: boolean, finding: string, scene: Scene): string {
    const known = this.words.get(`${scene.repeats} ${finding}`);
    if (known !== undefined) return known;
    const values = [...scene.bound.values()];
    const first = values.length > 0 && !hasValue ? ` (${values.join(', ')})` : '';
    const words = spliced(scene.file.text, { ...text, end: text.end - 1 }, holes(text, scene));
    const full = (suffix: string) => `${scene.repeats} ${words}${suffix}`;
    let suffix = first;
    for (let count = 2; (this.taken.get(full(suffix)) ?? finding) !== finding; count++)
      suffix = `${first} (${count})`;
    this.taken.set(full(suffix), finding);
    this.words.set(`${scene.repeats} ${finding}`, suffix);
    return suffix;
  }
}

/** The scene in one round of a `for each`. */
function round(statement: ForEach, value: string, scene: Scene): Scene {
  const bound = new Map(scene.bound);
  bound.set(statement.variable!.text, value);
  return { ...scene, bound, copied: true, rounds: `${scene.rounds}/${statement.start}:${value}` };
}

function holes({ holes: names }: Text, { bound }: Scene): Edit[] {
  return names.flatMap(({ text, start, end }) => {
    const value = bound.get(text);
    return value === undefined ? [] : [{ start: start - 1, end: end + 1, text: value }];
  });
}

/** A name or position that stands for the value of a loop variable. */
function refEdits(ref: Ref, scene: Scene): Edit[] {
  const { name, positions } = ref;
  const edits: Edit[] = [];
  const value = scene.bound.get(name.text);
  if (value !== undefined) edits.push({ start: name.start, end: name.end, text: value });
  for (const position of positions) {
    const text = positionText(position, scene);
    if (text !== positionText(position)) edits.push({ start: position.start, end: position.end, text });
  }
  return edits;
}

function refText({ name, positions, count }: Ref, scene: Scene): string {
  const places = positions.map((position) => positionText(position, scene)).join(', ');
  const text = scene.bound.get(name.text) ?? name.text;
  return `${text}${places === '' ? '' : ` ${places}`}${count === undefined ? '' : ` x${count}`}`;
}

function positionText({ from, to }: Position, scene?: Scene): string {
  const value = (text: string) => scene?.bound.get(text) ?? text;
  return to === undefined ? `#${value(from)}` : `#${value(from)}..#${value(to)}`;
}

function stepOf(title: string, contents: string): string {
  return `step ${title} {\n${contents}\n}`;
}

function titleOf({ title }: { title?: Text }, name: string, { text }: LoadedFile): string {
  return title ? text.slice(title.start, title.end) : quoted(name);
}

/** A name as words for a reader. */
function quoted(name: string): string {
  return `"${name.replaceAll('-', ' ')}"`;
}

function oneLine(text: string): string {
  return text.replaceAll(/\s+/g, ' ');
}
