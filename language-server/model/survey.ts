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
    const chunk = { parts, kept: new Map<string, Kept>() };
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
    return this.gather(what, basis, (parts) => parts.flatMap((part) => answersOf(part, ask)));
  }

  /** The same, where a branch, a repeat or an action is asked as a whole: what stands in it is not asked again. */
  wholes<Result>(what: string, basis: readonly unknown[], ask: Ask<Result>): Result[] {
    return this.gather(what, basis, (parts) => parts.flatMap(({ statement }) => ask(statement)));
  }

  /** The same as `each`, every answer of a chunk once. */
  distinct<Result>(what: string, basis: readonly unknown[], ask: Ask<Result>): Result[] {
    return this.gather(what, basis, (parts) => [...new Set(parts.flatMap((part) => answersOf(part, ask)))]);
  }

  /** One answer for each stretch of the row, where that is enough to pass over most of them. */
  stretches<Result>(
    what: string,
    basis: readonly unknown[],
    ask: (statements: readonly Statement[]) => Result,
  ): Result[] {
    return this.gather(what, basis, (parts) => [ask(parts.map(({ statement }) => statement))]);
  }

  private gather<Result>(
    what: string,
    basis: readonly unknown[],
    work: (parts: readonly Part[]) => readonly Result[],
  ): Result[] {
    const all: Result[] = [];
    for (const { parts, kept } of this.chunks) {
      let known = kept.get(what);
      if (!known || !isEqual(known.basis, basis)) {
        const results = work(parts);
        known = { basis, results: results.length > 0 ? results : NOTHING };
        kept.set(what, known);
      }
      if (known.results.length > 0) for (const one of known.results) all.push(one as Result);
    }
    return all;
  }
}

const NOTHING: readonly unknown[] = [];

function answersOf<Result>({ kind, statement }: Part, ask: Ask<Result>): readonly Result[] {
  if (kind !== 'do') return ask(statement);
  const bodies = bodiesOf(statement);
  if (bodies.length === 0) return ask(statement);
  const found: Result[] = [];
  inside(statement, ask, found);
  return found;
}

function inside<Result>(statement: Statement, ask: Ask<Result>, found: Result[]): void {
  for (const one of ask(statement)) found.push(one);
  for (const body of bodiesOf(statement)) for (const inner of body.statements) inside(inner, ask, found);
}

function isEqual(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((one, index) => one === b[index]);
}
