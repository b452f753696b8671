/** Procedures: blocks and the statements that are no actions. */
import type { ParserMethod } from 'chevrotain';
import type {
  Allow,
  Block,
  Broken,
  Choice,
  ForEach,
  Hold,
  If,
  Notice,
  Procedure,
  Repeat,
  Reverse,
  Statement,
  Step,
  Task,
  When,
} from '../syntax/tree.ts';
import * as T from '../tokens/types.ts';
import { isWord, type Lexeme } from '../tokens/types.ts';
import { VERB_PHRASES } from '../tokens/verbs.ts';
import { HEADER_WORDS, STATEMENT_STARTS } from '../tokens/words.ts';
import { verbAt } from './arrange.ts';
import { nameOf, spanOf } from './base.ts';
import { HEADER_STARTS, HeaderRules } from './headers.ts';
import { nearest } from './near.ts';

export class ProcedureRules extends HeaderRules {
  private statementAlternatives: { ALT: () => Statement }[] | undefined;

  override readonly block: ParserMethod<[], Block> = this.RULE('block', (): Block => {
    const start = this.CONSUME(T.LBrace).startOffset;
    const statements: Statement[] = [];
    this.MANY(() => this.SUBRULE(this.blockItem, { ARGS: [statements] }));
    const brace = this.CONSUME(T.RBrace);
    return { start, end: brace.endOffset! + 1, statements, closed: !this.virtual.has(brace) };
  });

  private readonly blockItem = this.RULE('blockItem', (statements: Statement[]) => {
    this.OR({
      IGNORE_AMBIGUITIES: true,
      DEF: [
        {
          ALT: () => {
            const statement = this.SUBRULE(this.statement);
            if (!this.RECORDING_PHASE) statements.push(statement);
          },
        },
        { ALT: () => this.SUBRULE(this.unknown, { ARGS: [statements] }) },
        { ALT: () => this.SUBRULE(this.misplacedItem, { ARGS: [statements] }) },
        { ALT: () => this.SUBRULE(this.stray, { ARGS: [statements] }) },
        { ALT: () => this.SUBRULE(this.strayBlock, { ARGS: [statements] }) },
      ],
    });
  });

  readonly statement = this.RULE('statement', (): Statement => {
    this.statementAlternatives ??= [
      { ALT: () => this.SUBRULE(this.action) },
      { ALT: () => this.SUBRULE(this.task) },
      { ALT: () => this.SUBRULE(this.step) },
      { ALT: () => this.SUBRULE(this.notice) },
      { ALT: () => this.SUBRULE(this.when) },
      { ALT: () => this.SUBRULE(this.if) },
      { ALT: () => this.SUBRULE(this.choice) },
      { ALT: () => this.SUBRULE(this.repeat) },
      { ALT: () => this.SUBRULE(this.forEach) },
      { ALT: () => this.SUBRULE(this.reverse) },
      { ALT: () => this.SUBRULE(this.do) },
      { ALT: () => this.SUBRULE(this.hold) },
      { ALT: () => this.SUBRULE(this.allow) },
      { ALT: () => this.SUBRULE(this.stop) },
      { ALT: () => this.SUBRULE(this.continues) },
      { ALT: () => this.SUBRULE(this.value) },
    ];
    return this.OR(this.statementAlternatives);
  });

  // ------------------------------------------------------------ groups

  private readonly task = this.RULE('task', (): Task => {
    const start = this.CONSUME(T.TaskStart).startOffset;
    const task: Task = { kind: 'task', start, end: start };
    this.OPTION({ GATE: this.nameNext, DEF: () => (task.name = this.SUBRULE(this.word)) });
    if (!task.name) this.missing('The name of the task is missing.', 'task strip "Take the head off" { }');
    const title = this.optionalText();
    if (title) task.title = title;
    this.body(task, 'the task');
    return task;
  });

  private readonly step = this.RULE('step', (): Step => {
    const start = this.CONSUME(T.StepStart).startOffset;
    const step: Step = { kind: 'step', start, end: start };
    const title = this.optionalText();
    if (title) step.title = title;
    this.body(step, 'the step');
    return step;
  });

  /** The block of a statement, with everything that does not belong before it reported. */
  private body(owner: { body?: Block; end: number }, what: string): void {
    this.beforeBlock(what);
    this.option(41, () => {
      owner.body = this.subrule(41, this.block);
    });
    if (!owner.body) this.missing(`The block of ${what} is missing.`, undefined, 'brace-missing');
    owner.end = this.RECORDING_PHASE ? 0 : this.endOfLast();
  }

  private otherwise(owner: { otherwise?: Block; end: number }): void {
    this.option(42, () => {
      this.consume(42, T.Otherwise);
      this.option(43, () => {
        owner.otherwise = this.subrule(43, this.block);
        owner.end = this.RECORDING_PHASE ? 0 : this.endOfLast();
      });
    });
  }

  private readonly hold = this.RULE('hold', (): Hold => {
    const start = this.CONSUME(T.HoldStart).startOffset;
    const hold: Hold = { kind: 'hold', start, end: start };
    const text = this.wantedText('hold');
    if (text) hold.text = text;
    this.body(hold, '“hold”');
    return hold;
  });

  // ------------------------------------------------------------ flow

  private readonly when = this.RULE('when', (): When => {
    const start = this.CONSUME(T.WhenStart).startOffset;
    const when: When = { kind: 'when', start, end: start };
    const condition = this.SUBRULE(this.condition);
    if (condition) when.condition = condition;
    this.body(when, '“when”');
    this.otherwise(when);
    return when;
  });

  private readonly if = this.RULE('if', (): If => {
    const start = this.CONSUME(T.IfStart).startOffset;
    const node: If = { kind: 'if', start, end: start };
    const condition = this.SUBRULE(this.condition);
    if (condition) node.condition = condition;
    this.body(node, '“if”');
    this.otherwise(node);
    return node;
  });

  private readonly choice = this.RULE('choice', (): Choice => {
    const start = this.CONSUME(T.ChoiceStart).startOffset;
    const choice: Choice = { kind: 'choice', values: [], start, end: start };
    this.OPTION({ GATE: this.nameNext, DEF: () => (choice.name = this.SUBRULE(this.word)) });
    if (!choice.name) this.missing('The name of the choice is missing.', 'choice place: bench, in-place');
    this.OPTION1(() => {
      this.CONSUME(T.Colon);
      choice.values = this.SUBRULE(this.words);
    });
    if (choice.values.length === 0)
      this.missing('What can be chosen is missing.', 'choice place: bench, in-place');
    choice.end = this.RECORDING_PHASE ? 0 : this.endOfLast();
    return choice;
  });

  private readonly repeat = this.RULE('repeat', (): Repeat => {
    const start = this.CONSUME(T.RepeatStart).startOffset;
    const repeat: Repeat = { kind: 'repeat', start, end: start };
    this.MANY(() =>
      this.OR([
        {
          ALT: () => {
            this.CONSUME(T.Until);
            const until = this.SUBRULE(this.condition);
            if (until) repeat.until = until;
          },
        },
        {
          ALT: () => {
            this.CONSUME(T.Bound);
            this.OPTION(() => {
              const number = this.CONSUME(T.NumberToken);
              repeat.atMost = Number(number.image);
            });
            this.OPTION1(() => this.CONSUME(T.TimesWord));
            if (repeat.atMost === undefined)
              this.missing('The number of times is missing after “at most”.', 'at most 5 times');
          },
        },
      ]),
    );
    if (!repeat.until) {
      this.missing(
        '“repeat” does not say until when.',
        'repeat until "no more bubbles come" at most 5 times { }',
      );
    }
    this.body(repeat, '“repeat”');
    this.otherwise(repeat);
    return repeat;
  });

  private readonly forEach = this.RULE('forEach', (): ForEach => {
    const start = this.CONSUME(T.ForEachStart).startOffset;
    const node: ForEach = { kind: 'for each', start, end: start };
    const example = 'for each cylinder in 1..3 { }, for each #n of bearing-caps { }';
    this.OPTION({
      GATE: () => this.nextIs(T.PositionToken) || this.nameNext(),
      DEF: () => {
        node.variable = this.OR([
          { ALT: () => hashless(this.CONSUME(T.PositionToken) as Lexeme) },
          { ALT: () => this.SUBRULE(this.word) },
        ]);
      },
    });
    if (!node.variable) this.missing('What is counted is missing after “for each”.', example);
    this.OPTION1(() =>
      this.OR1([
        {
          ALT: () => {
            this.CONSUME(T.In);
            this.OPTION2({
              GATE: () => this.nextIs(T.NumberToken) || this.nameNext(),
              DEF: () => {
                node.over = this.OR2([
                  { ALT: () => this.SUBRULE(this.numbers) },
                  { ALT: () => this.SUBRULE(this.namesOver) },
                ]);
              },
            });
          },
        },
        {
          ALT: () => {
            this.CONSUME(T.Of);
            const ref = this.SUBRULE(this.oneRef);
            if (ref && !this.RECORDING_PHASE)
              node.over = { kind: 'positions', ref, start: ref.start, end: ref.end };
          },
        },
      ]),
    );
    if (!node.over) this.missing('What “for each” goes through is missing.', example);
    this.body(node, '“for each”');
    return node;
  });

  private readonly numbers = this.RULE('numbers', (): NonNullable<ForEach['over']> => {
    const first = this.CONSUME(T.NumberToken);
    const from = Number(first.image);
    let to: number | undefined;
    this.OPTION(() => {
      this.CONSUME(T.Dots);
      this.OPTION1(() => {
        to = Number(this.CONSUME1(T.NumberToken).image);
      });
    });
    if (to === undefined) this.missing('The last number is missing.', 'for each cylinder in 1..3 { }');
    return {
      kind: 'numbers',
      from,
      to: to ?? from,
      start: first.startOffset,
      end: this.RECORDING_PHASE ? 0 : this.endOfLast(),
    };
  });

  private readonly namesOver = this.RULE('namesOver', (): NonNullable<ForEach['over']> => {
    const names = this.SUBRULE(this.words);
    return {
      kind: 'names',
      names,
      start: names[0]?.start ?? 0,
      end: this.RECORDING_PHASE ? 0 : this.endOfLast(),
    };
  });

  private readonly reverse = this.RULE('reverse', (): Reverse => {
    const start = this.CONSUME(T.ReverseStart).startOffset;
    const reverse: Reverse = { kind: 'reverse', except: [], start, end: start };
    this.OPTION({ GATE: this.nameNext, DEF: () => (reverse.task = this.SUBRULE(this.word)) });
    if (!reverse.task)
      this.missing('The task is missing after “reverse”.', 'reverse strip except head-gasket');
    this.OPTION1(() => {
      this.CONSUME(T.Except);
      reverse.except = this.SUBRULE(this.refs);
    });
    reverse.end = this.RECORDING_PHASE ? 0 : this.endOfLast();
    return reverse;
  });

  private readonly do = this.RULE('do', (): Statement => {
    const start = this.CONSUME(T.DoStart).startOffset;
    const node: Statement & { kind: 'do' } = { kind: 'do', start, end: start };
    this.OPTION({ GATE: this.nameNext, DEF: () => (node.ref = this.SUBRULE(this.word)) });
    if (!node.ref) this.missing('The procedure or task is missing after “do”.', 'do hub-removal');
    node.end = this.RECORDING_PHASE ? 0 : this.endOfLast();
    return node;
  });

  private readonly allow = this.RULE('allow', (): Allow => {
    const start = this.CONSUME(T.AllowStart).startOffset;
    const allow: Allow = { kind: 'allow', start, end: start };
    this.OPTION({ GATE: this.nameNext, DEF: () => (allow.check = this.SUBRULE(this.word)) });
    if (!allow.check)
      this.missing('The name of the finding is missing after “allow”.', 'allow still-held because "Why"');
    this.OPTION1(() => {
      this.CONSUME(T.Because);
      this.OPTION2(() => {
        allow.reason = this.SUBRULE(this.text);
      });
    });
    if (!allow.reason)
      this.missing('The reason is missing.', 'allow still-held because "The cover hangs on its hinge."');
    allow.end = this.RECORDING_PHASE ? 0 : this.endOfLast();
    return allow;
  });

  private readonly stop = this.RULE('stop', (): Statement => {
    const start = this.CONSUME(T.StopStart).startOffset;
    const stop: Statement & { kind: 'stop' } = { kind: 'stop', start, end: start };
    const text = this.wantedText('stop');
    if (text) stop.text = text;
    stop.end = this.RECORDING_PHASE ? 0 : this.endOfLast();
    return stop;
  });

  private readonly continues = this.RULE('continues', (): Statement => {
    return { kind: 'continues', ...spanOf(this.CONSUME(T.ContinuesStart)) };
  });

  private readonly notice = this.RULE('notice', (): Notice => {
    const token = this.CONSUME(T.Signal);
    const notice: Notice = {
      kind: 'notice',
      signal: token.image as Notice['signal'],
      word: nameOf(token),
      hazards: [],
      ...spanOf(token),
    };
    this.OPTION({ GATE: this.nameNext, DEF: () => (notice.hazards = this.SUBRULE(this.words)) });
    const text = this.wantedText(token.image);
    if (text) notice.text = text;
    notice.end = this.RECORDING_PHASE ? 0 : this.endOfLast();
    return notice;
  });

  // ------------------------------------------------------------ what does not belong

  /** A line that begins with a word that is no verb. Its block, if it has one, is still read. */
  private readonly unknown = this.RULE('unknown', (statements: Statement[]) => {
    const token = this.CONSUME(T.Unknown);
    if (!this.RECORDING_PHASE) this.reportUnknown(token as Lexeme);
    this.SUBRULE(this.junk);
    if (this.RECORDING_PHASE) return;
    statements.push(this.broken(token.startOffset));
    this.skipping = true;
  });
  /** The block that follows belonged to something that could not be read. */
  private skipping = false;

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
  private readonly misplacedItem = this.RULE('misplacedItem', (statements: Statement[]) => {
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
    if (this.RECORDING_PHASE) return;
    this.problems.length = before;
    statements.push(this.broken(start));
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
  private readonly stray = this.RULE('stray', (statements: Statement[]) => {
    const token = this.next();
    const start = token.startOffset;
    if (!this.RECORDING_PHASE) this.reportStatement(token);
    this.OR([
      {
        GATE: () => this.nextIs(T.VerbStart),
        ALT: () => {
          const action = this.SUBRULE(this.action);
          if (!this.RECORDING_PHASE) statements.push(action);
        },
      },
      {
        ALT: () => {
          this.CONSUME(T.Skippable);
          this.SUBRULE(this.junk);
          if (this.RECORDING_PHASE) return;
          statements.push(this.broken(start));
          this.skipping = true;
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
  private readonly strayBlock: (statements: Statement[]) => void = this.RULE(
    'strayBlock',
    (statements: Statement[]) => {
      const brace = this.next();
      if (!this.skipping) {
        this.wrong(
          brace,
          'syntax',
          'This block belongs to nothing; blocks stand behind task, step, when, if, repeat, for each and hold.',
        );
      }
      this.skipping = false;
      this.CONSUME(T.LBrace);
      this.MANY(() => this.SUBRULE(this.blockItem, { ARGS: [statements] }));
      this.CONSUME(T.RBrace);
    },
  );

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
        `“${token.image}” says nothing about a procedure${meant ? `; did you mean “${meant}”?` : '; its block should begin here.'}`,
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

function hashless(token: Lexeme): { start: number; end: number; text: string } {
  return { ...spanOf(token), text: token.image.slice(1) };
}

/** Whether a statement can end with this token, so that what follows on the line stands behind one. */
function statementBefore(token: Lexeme): boolean {
  return token.tokenType !== T.LBrace && token.tokenType !== T.RBrace && !Number.isNaN(token.startOffset);
}

const START_WORDS: readonly string[] = [
  ...[...VERB_PHRASES.values()].flatMap((list) => list.map((phrase) => phrase.words.join(' '))),
  ...STATEMENT_STARTS.keys(),
];
