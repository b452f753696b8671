/** Blocks and the statements that are no actions. */
import type { ParserMethod } from 'chevrotain';
import type {
  Allow,
  Block,
  Choice,
  ForEach,
  Hold,
  If,
  Notice,
  Repeat,
  Reverse,
  Statement,
  Step,
  Task,
  When,
} from '../syntax/tree.ts';
import type { Lexeme } from '../tokens/types.ts';
import * as T from '../tokens/types.ts';
import { nameOf, spanOf } from './base.ts';
import { HeaderRules } from './headers.ts';

export class StatementRules extends HeaderRules {
  /** One statement or what stands in its place; the rules of procedures define it. */
  declare readonly blockItem: ParserMethod<[], void>;
  /** The statements of the block that is being read. */
  protected statements: Statement[] = [];
  private readonly blockItems = (): void => this.SUBRULE(this.blockItem);

  override readonly block: ParserMethod<[], Block> = this.RULE('block', (): Block => {
    const start = this.CONSUME(T.LBrace).startOffset;
    const outer = this.statements;
    const statements: Statement[] = [];
    this.statements = statements;
    this.MANY(this.blockItems);
    this.statements = outer;
    const brace = this.CONSUME(T.RBrace);
    return { start, end: brace.endOffset! + 1, statements, closed: !this.virtual.has(brace) };
  });

  /** The alternatives of `blockItem` that are statements, made once. */
  protected readonly statementKinds: { ALT: () => Statement }[] = [
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
    owner.end = this.lastEnd();
  }

  private otherwise(owner: { otherwise?: Block; end: number }): void {
    this.option(42, () => {
      this.consume(42, T.Otherwise);
      this.option(43, () => {
        owner.otherwise = this.subrule(43, this.block);
        owner.end = this.lastEnd();
      });
    });
  }

  private readonly hold = this.RULE('hold', (): Hold => {
    const start = this.CONSUME(T.HoldStart).startOffset;
    const hold: Hold = { kind: 'hold', start, end: start };
    const text = this.wantedText('hold', 'hold "keep nitrogen flowing" { }');
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
    choice.end = this.lastEnd();
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
      end: this.lastEnd(),
    };
  });

  private readonly namesOver = this.RULE('namesOver', (): NonNullable<ForEach['over']> => {
    const names = this.SUBRULE(this.words);
    return {
      kind: 'names',
      names,
      start: names[0]?.start ?? 0,
      end: this.lastEnd(),
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
    reverse.end = this.lastEnd();
    return reverse;
  });

  private readonly do = this.RULE('do', (): Statement => {
    const start = this.CONSUME(T.DoStart).startOffset;
    const node: Statement & { kind: 'do' } = { kind: 'do', start, end: start };
    this.OPTION({ GATE: this.nameNext, DEF: () => (node.ref = this.SUBRULE(this.word)) });
    if (!node.ref) this.missing('The procedure or task is missing after “do”.', 'do hub-removal');
    node.end = this.lastEnd();
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
    allow.end = this.lastEnd();
    return allow;
  });

  private readonly stop = this.RULE('stop', (): Statement => {
    const start = this.CONSUME(T.StopStart).startOffset;
    const stop: Statement & { kind: 'stop' } = { kind: 'stop', start, end: start };
    const text = this.wantedText('stop', 'stop "Send the head for repair."');
    if (text) stop.text = text;
    stop.end = this.lastEnd();
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
    const text = this.wantedText(token.image, `${token.image} "Stand to one side."`);
    if (text) notice.text = text;
    notice.end = this.lastEnd();
    return notice;
  });
}

function hashless(token: Lexeme): { start: number; end: number; text: string } {
  return { ...spanOf(token), text: token.image.slice(1) };
}
