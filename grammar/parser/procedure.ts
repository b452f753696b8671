/** Procedures, and what does not belong among their steps. */
import type { ParserMethod } from 'chevrotain';
import type { Broken, Procedure, Statement } from '../syntax/tree.ts';
import * as T from '../tokens/types.ts';
import { isWord, type Lexeme } from '../tokens/types.ts';
import { VERB_PHRASES } from '../tokens/verbs.ts';
import { HEADER_WORDS, STATEMENT_STARTS } from '../tokens/words.ts';
import { verbAt } from './arrange.ts';
import { shown, spanOf } from './base.ts';
import { HEADER_STARTS } from './headers.ts';
import { nearest } from './near.ts';
import { StatementRules } from './statements.ts';

export class ProcedureRules extends StatementRules {
  private readonly itemKinds = {
    IGNORE_AMBIGUITIES: true,
    DEF: [
      ...this.statementKinds,
      { ALT: () => this.SUBRULE(this.unknown) },
      { ALT: () => this.SUBRULE(this.misplacedItem) },
      { ALT: () => this.SUBRULE(this.stray) },
      { ALT: () => this.SUBRULE(this.strayBlock) },
    ] as { ALT: () => Statement | undefined }[],
  };

  override readonly blockItem: ParserMethod<[], void> = this.RULE('blockItem', () => {
    const statement = this.OR(this.itemKinds);
    if (this.RECORDING_PHASE || statement === undefined) return;
    this.statements.push(statement);
    this.skipping = statement.kind === 'broken';
  });

  // ------------------------------------------------------------ what does not belong

  /** A line that begins with a word that is no verb. Its block, if it has one, is still read. */
  private readonly unknown = this.RULE('unknown', (): Statement | undefined => {
    const token = this.CONSUME(T.Unknown);
    if (!this.RECORDING_PHASE) this.reportUnknown(token as Lexeme);
    this.SUBRULE(this.junk);
    return this.RECORDING_PHASE ? undefined : this.broken(token.startOffset);
  });
  /** The block that follows belonged to something that could not be read. */
  private skipping = false;

  override begin(lexemes: Lexeme[], virtual: ReadonlySet<unknown>): void {
    super.begin(lexemes, virtual);
    this.skipping = false;
  }

  private reportUnknown(token: Lexeme): void {
    const meant = nearest(token.image, START_WORDS);
    const after = { start: token.startOffset, end: token.endOffset + 1 };
    this.problems.push({
      check: 'unknown-verb',
      ...after,
      message: meant
        ? `“${token.image}” is no verb that a step can begin with; did you mean “${meant}”?`
        : `“${token.image}” is no verb that a step can begin with.`,
      ...(meant
        ? { mend: { title: `Write “${meant}”`, ...after, text: meant } }
        : { example: 'remove cover' }),
    });
  }

  private broken(start: number): Broken {
    return { kind: 'broken', start, end: this.endOfLast() };
  }

  /** A declaration among the steps: read, reported, left out. */
  private readonly misplacedItem = this.RULE('misplacedItem', (): Statement | undefined => {
    const token = this.next();
    const start = token.startOffset;
    this.wrong(
      token,
      'syntax',
      `A ${token.image} is declared in a machine, not among the steps of a procedure.`,
    );
    const before = this.problems.length;
    this.OR([
      { ALT: () => this.SUBRULE(this.declaration) },
      { ALT: () => this.SUBRULE(this.misplacedFileItem) },
    ]);
    if (this.RECORDING_PHASE) return undefined;
    this.problems.length = before;
    return this.broken(start);
  });

  /** `machine` or `procedure` inside a block. */
  private readonly misplacedFileItem = this.RULE('misplacedFileItem', () => {
    this.OR([
      { ALT: () => this.CONSUME(T.MachineStart) },
      { ALT: () => this.CONSUME(T.ProcedureStart) },
      { ALT: () => this.CONSUME(T.UseStart) },
    ]);
    this.SUBRULE(this.junk);
    this.OPTION(() => this.SUBRULE(this.skipBlock));
  });

  /** What is left behind a statement, or stands where one should begin. */
  private readonly stray = this.RULE('stray', (): Statement | undefined => {
    const token = this.next();
    const start = token.startOffset;
    if (!this.RECORDING_PHASE) this.reportStatement(token);
    return this.OR([
      { GATE: () => this.nextIs(T.VerbStart), ALT: (): Statement => this.SUBRULE(this.action) },
      {
        ALT: () => {
          this.CONSUME(T.Skippable);
          this.SUBRULE(this.junk);
          return this.RECORDING_PHASE ? undefined : this.broken(start);
        },
      },
    ]);
  });

  private reportStatement(token: Lexeme): void {
    const behind = statementBefore(this.LA(0) as Lexeme) && !token.beginsLine;
    if (!behind) {
      const what = token.tokenType === T.TextString ? 'A text' : `“${token.image}”`;
      this.wrong(token, 'syntax', `${what} stands where a step should begin; a step begins with a verb.`, {
        example: 'remove cover',
      });
      return;
    }
    this.afterStatement(token);
    const match =
      token.tokenType === T.PlainWord ? verbAt(this.input as Lexeme[], this.indexOfNext()) : undefined;
    if (match && match.length === 1 && !match.closing && isWord(this.LA(2))) {
      token.become(T.VerbStart);
      token.verb = match.verb;
      token.closing = match.verb.closing;
    }
  }

  /** Braces of their own among the steps: what is in them is read as if they were not there. */
  private readonly strayBlock: ParserMethod<[], undefined> = this.RULE('strayBlock', (): undefined => {
    const brace = this.next();
    if (!this.skipping || brace.beginsLine) {
      const behind = statementBefore(this.LA(0) as Lexeme) && !brace.beginsLine;
      this.wrong(
        brace,
        'syntax',
        `${behind ? 'No block can stand behind this' : 'This block belongs to nothing'}; blocks stand behind task, step, when, if, repeat, for each and hold, outcomes behind measure, check, inspect and record.`,
      );
    }
    this.skipping = false;
    this.CONSUME(T.LBrace);
    this.MANY(() => this.SUBRULE(this.blockItem));
    this.CONSUME(T.RBrace);
  });

  // ------------------------------------------------------------ the procedure

  readonly procedure = this.RULE('procedure', (): Procedure => {
    const start = this.CONSUME(T.ProcedureStart).startOffset;
    const procedure: Procedure = { kind: 'procedure', headers: [], start, end: start };
    this.OPTION({ GATE: this.nameNext, DEF: () => (procedure.name = this.SUBRULE(this.word)) });
    if (!procedure.name)
      this.missing('The name of the procedure is missing.', 'procedure pump "Renew the pump" { }');
    const title = this.optionalText();
    if (title) procedure.title = title;
    this.MANY({
      GATE: this.notStarting,
      DEF: () =>
        this.OR({
          IGNORE_AMBIGUITIES: true,
          DEF: [
            {
              ALT: () => {
                const header = this.SUBRULE(this.header);
                if (!this.RECORDING_PHASE) procedure.headers.push(header);
              },
            },
            { ALT: () => this.SUBRULE(this.strayHeader) },
          ],
        }),
    });
    this.OPTION1(() => {
      procedure.body = this.subrule(44, this.block);
    });
    if (this.RECORDING_PHASE) return procedure;
    if (!procedure.body && !procedure.headers.some((header) => header.header === 'elsewhere')) {
      this.missing(
        'The procedure has no block; one that is printed elsewhere says so.',
        'procedure shut-down elsewhere "chapter 2"',
        'brace-missing',
      );
    }
    procedure.end = this.endOfLast();
    return procedure;
  });

  private readonly strayHeader = this.RULE('strayHeader', () => {
    const token = this.next();
    if (!this.RECORDING_PHASE) {
      const meant = token.tokenType === T.PlainWord ? nearest(token.image, HEADER_WORDS) : undefined;
      this.wrong(
        token,
        'syntax',
        `${shown(token)} says nothing about a procedure${meant ? `; did you mean “${meant}”?` : '; its block should begin here.'}`,
        meant ? { mend: { title: `Write “${meant}”`, ...spanOf(token), text: meant } } : {},
      );
    }
    this.CONSUME(T.Skippable);
    this.MANY({
      GATE: () => !this.atStatementEnd() && !HEADER_STARTS.has(this.LA(1).tokenType),
      DEF: () => this.CONSUME1(T.Skippable),
    });
  });
}

/** Whether a statement can end with this token, so that what follows on the line stands behind one. */
function statementBefore(token: Lexeme): boolean {
  return token.tokenType !== T.LBrace && token.tokenType !== T.RBrace && !Number.isNaN(token.startOffset);
}

const START_WORDS: readonly string[] = [
  ...[...VERB_PHRASES.values()].flatMap((list) => list.map((phrase) => phrase.words.join(' '))),
  ...STATEMENT_STARTS.keys(),
];
