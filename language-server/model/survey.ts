/**
 * What the statements of a procedure show one by one, asked once for as long as they are the same. A procedure is gone
 * through in reading order and cut into chunks where the place of a statement says so, so that an edit changes
 * one or two of them. Each chunk keeps the answers that it gave.
 *
 * An answer may rest on the statement, on what stands inside it, and on the `basis` that is given with the question:
 * never on its neighbours. What looks at several statements gathers those that matter and looks at these.
 */
import type { Procedure, Statement } from '../../grammar/syntax/tree.ts';
import { bodiesOf } from './flow-walk.ts';
import type { Owner, Part } from './row.ts';

/** A question about one statement; `Result`s of all are gathered in the order of the row. */
export type Ask<Result> = (statement: Statement) => readonly Result[];

interface Kept {
  readonly basis: readonly unknown[];
  readonly results: readonly unknown[];
}

interface Chunk {
  readonly parts: readonly Part[];
  readonly kept: Map<string, Kept>;
  /** The statements of the parts, and those with all that stands in them: some forty questions go through them. */
  readonly heads: readonly Statement[];
  readonly all: readonly Statement[];
}

/** One statement in so many begins a chunk. */
const USUAL_LENGTH = 32;
const MOST_LENGTH = 128;

export class Surveys {
  /** By the statement that it begins with. */
  private readonly chunks = new WeakMap<object, Chunk>();
  private readonly lists = new WeakMap<Owner, readonly Chunk[]>();

  /** The procedure as it stands now. */
  of(procedure: Procedure): Survey {
    return new Survey(procedure, this.list(procedure));
  }

  private list(owner: Owner): readonly Chunk[] {
    let list = this.lists.get(owner);
    if (!list) {
      list = this.cut(owner);
      this.lists.set(owner, list);
    }
    return list;
  }

  private cut(owner: Owner): Chunk[] {
    const chunks: Chunk[] = [];
    let parts: Part[] = [];
    const end = () => {
      if (parts.length > 0) chunks.push(this.chunk(parts));
      parts = [];
    };
    if (owner.kind !== 'procedure') parts.push({ kind: 'open', statement: owner });
    for (const statement of owner.body?.statements ?? []) {
      if (statement.kind === 'task' || statement.kind === 'step' || statement.kind === 'hold') {
        end();
        for (const chunk of this.list(statement)) chunks.push(chunk);
        continue;
      }
      if (parts.length >= MOST_LENGTH || begins(statement)) end();
      parts.push({ kind: 'do', statement });
    }
    end();
    return chunks;
  }

  private chunk(parts: readonly Part[]): Chunk {
    // A task that is edited is another one; its name and title mostly are not.
    const [{ kind, statement }] = parts as [Part];
    const first = kind === 'do' ? statement : (headOf(statement) ?? statement);
    const known = this.chunks.get(first);
    if (known && isSame(known.parts, parts)) return known;
    const heads = parts.map(({ statement }) => statement);
    const all: Statement[] = [];
    for (const part of parts) {
      all.push(part.statement);
      if (part.kind === 'do') inside(part.statement, all);
    }
    const chunk = { parts, kept: new Map<string, Kept>(), heads, all };
    this.chunks.set(first, chunk);
    return chunk;
  }
}

/** Of a task, step or hold: what is the same object for as long as its head is the same. */
function headOf(statement: Statement): object | undefined {
  if ('title' in statement && statement.title) return statement.title;
  return 'text' in statement ? statement.text : undefined;
}

function begins(statement: Statement): boolean {
  // Places of lines that stay are the same numbers.
  return (Math.imul(statement.start, 0x9e3779b1) >>> 8) % USUAL_LENGTH === 0;
}

function isSame(a: readonly Part[], b: readonly Part[]): boolean {
  return a.length === b.length && a.every((part, index) => showsTheSame(part, b[index]!));
}

/** What a task or step shows by itself is its head. */
function showsTheSame(a: Part, b: Part): boolean {
  if (a.kind !== b.kind) return false;
  if (a.statement === b.statement) return true;
  if (a.kind === 'do' || a.statement.kind !== b.statement.kind) return false;
  const head = ({ statement }: Part) => [
    statement.start,
    'name' in statement ? statement.name : undefined,
    'title' in statement ? statement.title : undefined,
    'text' in statement ? statement.text : undefined,
  ];
  const other = head(b);
  return head(a).every((one, index) => one === other[index]);
}

export class Survey {
  readonly procedure: Procedure;
  private readonly chunks: readonly Chunk[];

  constructor(procedure: Procedure, chunks: readonly Chunk[]) {
    this.procedure = procedure;
    this.chunks = chunks;
  }

  /**
   * The answers of every statement, however deep it stands. Of a task, step or hold only the head is asked, since what
   * stands in it is asked by itself. `what` tells the question from all others; `basis`: what the answer rests on.
   */
  each<Result>(what: string, basis: readonly unknown[], ask: Ask<Result>): Result[] {
    return this.gather(what, basis, ({ all }) => answersOf(all, ask));
  }

  /** The same, where a branch, a repeat or an action is asked as a whole: what stands in it is not asked again. */
  wholes<Result>(what: string, basis: readonly unknown[], ask: Ask<Result>): Result[] {
    return this.gather(what, basis, ({ heads }) => answersOf(heads, ask));
  }

  /** The same as `each`, every answer of a chunk once. */
  distinct<Result>(what: string, basis: readonly unknown[], ask: Ask<Result>): Result[] {
    return this.gather(what, basis, ({ all }) => [...new Set(answersOf(all, ask))]);
  }

  /** One answer for each stretch of the row, where that is enough to pass over most of them. */
  stretches<Result>(
    what: string,
    basis: readonly unknown[],
    ask: (statements: readonly Statement[]) => Result,
  ): Result[] {
    return this.gather(what, basis, ({ heads }) => [ask(heads)]);
  }

  private gather<Result>(
    what: string,
    basis: readonly unknown[],
    work: (chunk: Chunk) => readonly Result[],
  ): Result[] {
    const all: Result[] = [];
    for (const chunk of this.chunks) {
      let known = chunk.kept.get(what);
      if (!known || !isEqual(known.basis, basis)) {
        const results = work(chunk);
        known = { basis, results: results.length > 0 ? results : NOTHING };
        chunk.kept.set(what, known);
      }
      if (known.results.length > 0) for (const one of known.results) all.push(one as Result);
    }
    return all;
  }
}

const NOTHING: readonly unknown[] = [];

function answersOf<Result>(statements: readonly Statement[], ask: Ask<Result>): readonly Result[] {
  let found: Result[] | undefined;
  for (const statement of statements) {
    const answers = ask(statement);
    // Nearly all answers are empty: nothing is made for them.
    if (answers.length === 0) continue;
    found ??= [];
    for (const one of answers) found.push(one);
  }
  return found ?? (NOTHING as readonly Result[]);
}

/** What stands in a statement, in reading order, however deep. */
function inside(statement: Statement, into: Statement[]): void {
  for (const body of bodiesOf(statement)) {
    for (const inner of body.statements) {
      into.push(inner);
      inside(inner, into);
    }
  }
}

function isEqual(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((one, index) => one === b[index]);
}
