/** Machines: declarations and the other items of a machine or of a file that machines share. */
import type {
  Clause,
  ClauseName,
  Coupled,
  Declaration,
  DeclarationKind,
  Machine,
  MachineItem,
  Never,
  Table,
  TableRow,
  Value,
  Variant,
} from '../syntax/tree.ts';
import { CLAUSES_OF } from '../tokens/clauses.ts';
import * as T from '../tokens/types.ts';
import { VERB_PHRASES } from '../tokens/verbs.ts';
import { CLAUSE_WORDS, HEADER_WORDS, STATEMENT_STARTS } from '../tokens/words.ts';
import { verbAt } from './arrange.ts';
import { nameOf, shown, spanOf } from './base.ts';
import { CLAUSE_STARTS } from './clauses.ts';
import { nearest } from './near.ts';
import { RuleRules } from './rules.ts';

export class MachineRules extends RuleRules {
  readonly machine = this.RULE('machine', (): Machine => {
    const start = this.CONSUME(T.MachineStart).startOffset;
    const machine: Machine = { kind: 'machine', items: [], start, end: start };
    this.OPTION({ GATE: this.nameNext, DEF: () => (machine.name = this.SUBRULE(this.word)) });
    if (!machine.name) this.missing('The name of the machine is missing.', 'machine tarn-t40 "Tarn T40" { }');
    const title = this.optionalText();
    if (title) machine.title = title;
    this.OPTION1(() => {
      this.CONSUME(T.Extends);
      this.OPTION2({ GATE: this.nameNext, DEF: () => (machine.extends = this.SUBRULE1(this.word)) });
      if (!machine.extends) this.missing('The name of the machine is missing after “extends”.');
    });
    this.beforeBlock('the machine');
    let opened = false;
    this.OPTION3(() => {
      opened = true;
      this.CONSUME(T.LBrace);
      this.MANY(() => this.SUBRULE(this.machineItem, { ARGS: [machine.items] }));
      this.CONSUME(T.RBrace);
    });
    if (!opened) this.missing('The machine has no block.', 'machine tarn-t40 { }', 'brace-missing');
    machine.end = this.lastEnd();
    return machine;
  });

  private readonly machineItem = this.RULE('machineItem', (items: MachineItem[]) => {
    this.OR({
      IGNORE_AMBIGUITIES: true,
      DEF: [
        { ALT: () => this.SUBRULE(this.sharedItem, { ARGS: [items] }) },
        { ALT: () => this.SUBRULE(this.strayItem, { ARGS: [items as unknown[], 'machine'] }) },
        { ALT: () => this.SUBRULE(this.strayItems, { ARGS: [items] }) },
      ],
    });
  });

  /** Braces around items without a meaning: the items are read as if the braces were not there. */
  private readonly strayItems: (items: MachineItem[]) => void = this.RULE(
    'strayItems',
    (items: MachineItem[]) => {
      this.wrong(this.next(), 'syntax', 'This block belongs to nothing.');
      this.CONSUME(T.LBrace);
      this.MANY(() => this.SUBRULE(this.machineItem, { ARGS: [items] }));
      this.CONSUME(T.RBrace);
    },
  );

  readonly sharedItem = this.RULE('sharedItem', (items: { push(item: MachineItem): unknown }) => {
    const item: MachineItem = this.OR([
      { ALT: () => this.SUBRULE(this.declaration) },
      { ALT: () => this.SUBRULE(this.coupled) },
      { ALT: () => this.SUBRULE(this.value) },
      { ALT: () => this.SUBRULE(this.table) },
      { ALT: () => this.SUBRULE(this.variant) },
      { ALT: () => this.SUBRULE(this.never) },
      { ALT: () => this.SUBRULE(this.rule) },
    ]);
    if (!this.RECORDING_PHASE) items.push(item);
  });

  // ------------------------------------------------------------ declarations

  private readonly clauseOrStray = {
    IGNORE_AMBIGUITIES: true,
    DEF: [...this.clauseKinds, { ALT: () => this.SUBRULE(this.strayInClauses) }] as {
      ALT: () => Clause | undefined;
    }[],
  };
  private readonly clauses = {
    GATE: this.notStarting,
    DEF: () => this.takeClause(this.OR(this.clauseOrStray)),
  };

  readonly declaration = this.RULE('declaration', (): Declaration => {
    const word = this.CONSUME(T.Kind);
    const type = word.image as DeclarationKind;
    const declaration: Declaration = {
      kind: 'declaration',
      type,
      word: nameOf(word),
      clauses: [],
      ...spanOf(word),
    };
    this.OPTION({ GATE: this.nameNext, DEF: () => (declaration.name = this.SUBRULE(this.word)) });
    if (!declaration.name) this.missing(`The name of the ${type} is missing.`, `${type} cover "cover"`);
    const title = this.optionalText();
    if (title) declaration.title = title;
    declaration.end = this.lastEnd();
    const outer = this.declared;
    this.declared = declaration;
    this.MANY(this.clauses);
    this.declared = outer;
    return declaration;
  });

  /** The declaration that is being read. */
  private declared: Declaration | undefined;

  private takeClause(clause: Clause | undefined): void {
    const { declared } = this;
    if (this.RECORDING_PHASE || !clause || !declared) return;
    declared.clauses.push(clause);
    declared.end = clause.end;
    if (!CLAUSES_OF[declared.type].includes(clause.clause)) {
      this.misplaced(declared.type, clause.clause, clause.word);
    }
  }

  private misplaced(type: DeclarationKind, clause: ClauseName, span: { start: number; end: number }): void {
    const able = (Object.keys(CLAUSES_OF) as DeclarationKind[]).filter((kind) =>
      CLAUSES_OF[kind].includes(clause),
    );
    this.problems.push({
      check: 'clause-misplaced',
      start: span.start,
      end: span.end,
      message: `${type === 'isolator' ? 'An' : 'A'} ${type} has no clause “${clause}”${able.length > 0 ? `; it can stand with ${listed(able)}` : ''}.`,
    });
  }

  /** What is no clause, up to the next clause on the line, the next line or the next declaration. */
  private readonly strayInClauses = this.RULE('strayInClauses', (): undefined => {
    const lost = this.RECORDING_PHASE ? 'clause' : this.extentOfStray();
    if (!this.RECORDING_PHASE && this.declared) this.reportStray(this.declared);
    this.CONSUME(T.Skippable);
    this.MANY({
      GATE: () => {
        if (this.atStatementEnd()) return false;
        const clause = CLAUSES.has(this.LA(1).tokenType);
        if (this.next().beginsLine) return clause && lost === 'item';
        if (lost !== 'clause') return true;
        return !clause || this.LA(0).tokenType === T.Comma;
      },
      DEF: () => this.CONSUME1(T.Skippable),
    });
  });

  /** How much cannot be read: an item with its clauses, a line, or what stands before the next clause. */
  private extentOfStray(): 'item' | 'line' | 'clause' {
    const token = this.next();
    if (!token.beginsLine || token.tokenType !== T.PlainWord) return 'clause';
    const meant = nearest(token.image, LINE_WORDS);
    return meant !== undefined && ITEM_WORDS.includes(meant) ? 'item' : 'line';
  }

  private reportStray(declaration: Declaration): void {
    const token = this.next();
    const owner = `the ${declaration.type}${declaration.name ? ` “${declaration.name.text}”` : ''}`;
    if (token.tokenType === T.TextString) {
      this.wrong(token, 'syntax', `A text stands where a clause of ${owner} should begin.`, {
        example: 'goes "tab outwards"',
      });
      return;
    }
    if (token.tokenType !== T.PlainWord) {
      this.wrong(token, 'syntax', `“${token.image}” stands where a clause of ${owner} should begin.`);
      return;
    }
    if (
      token.beginsLine &&
      verbAt(this.input as T.Lexeme[], this.indexOfNext()) &&
      !nearest(token.image, LINE_WORDS)
    ) {
      this.wrong(
        token,
        'syntax',
        `“${token.image}” is an action, and actions stand in a procedure, not in a machine.`,
      );
      return;
    }
    if (KIND_WORDS.has(token.image)) {
      this.wrong(token, 'syntax', `The declaration of this ${token.image} must start on a new line.`, {
        mend: { title: 'Start a new line', start: token.startOffset, end: token.startOffset, text: '\n' },
      });
      token.become(T.Kind);
      token.starts = true;
      return;
    }
    const meant = nearest(token.image, token.beginsLine ? LINE_WORDS : CLAUSE_WORDS);
    this.wrong(
      token,
      'syntax',
      `“${token.image}” begins no clause of ${owner}${meant ? `; did you mean “${meant}”?` : '.'}`,
      {
        ...(meant ? { mend: { title: `Write “${meant}”`, ...spanOf(token), text: meant } } : {}),
      },
    );
  }

  // ------------------------------------------------------------ the other items

  private readonly coupled = this.RULE('coupled', (): Coupled => {
    const start = this.CONSUME(T.CoupledStart).startOffset;
    const refs = this.SUBRULE(this.refs);
    const coupled: Coupled = { kind: 'coupled', refs, start, end: start };
    this.OPTION(() => {
      this.CONSUME(T.While);
      const condition = this.SUBRULE(this.condition);
      if (condition) coupled.while = condition;
    });
    this.leftover('the coupled parts');
    coupled.end = this.lastEnd();
    return coupled;
  });

  readonly value = this.RULE('value', (): Value => {
    const start = this.CONSUME(T.ValueStart).startOffset;
    const value: Value = { kind: 'value', start, end: start };
    this.OPTION({ GATE: this.nameNext, DEF: () => (value.name = this.SUBRULE(this.word)) });
    if (!value.name) this.missing('The name of the value is missing.', 'value gap-limit = 0.5 mm');
    const title = this.optionalText();
    if (title) value.title = title;
    let given = false;
    this.OPTION1(() => {
      this.CONSUME(T.Equals);
      given = true;
      const expression = this.SUBRULE(this.expression);
      if (expression) value.expression = expression;
    });
    if (!given || this.RECORDING_PHASE) {
      this.missing('A value is given after “=”.', 'value gap-limit = 0.5 mm');
      this.OPTION2({
        GATE: () => this.quantityNext(),
        DEF: () => {
          const expression = this.SUBRULE1(this.expression);
          if (expression) value.expression = expression;
        },
      });
    }
    this.leftover('the value');
    value.end = this.lastEnd();
    return value;
  });

  private readonly variant = this.RULE('variant', (): Variant => {
    const start = this.CONSUME(T.VariantStart).startOffset;
    const variant: Variant = { kind: 'variant', values: [], start, end: start };
    this.OPTION({ GATE: this.nameNext, DEF: () => (variant.name = this.SUBRULE(this.word)) });
    if (!variant.name)
      this.missing('The name of the variant is missing.', 'variant supply: single-phase, three-phase');
    let given = false;
    this.OPTION1(() => {
      this.CONSUME(T.Colon);
      given = true;
      variant.values = this.SUBRULE(this.words);
    });
    if (!given || variant.values.length === 0) {
      this.missing('The values of the variant are missing.', 'variant supply: single-phase, three-phase');
    }
    this.leftover('the variant');
    variant.end = this.lastEnd();
    return variant;
  });

  private readonly never = this.RULE('never', (): Never => {
    const start = this.CONSUME(T.Demand).startOffset;
    const never: Never = { kind: 'never', start, end: start };
    const condition = this.SUBRULE(this.condition);
    if (condition) never.condition = condition;
    this.leftover('the combination that is not built');
    never.end = this.lastEnd();
    return never;
  });

  private readonly table = this.RULE('table', (): Table => {
    const start = this.CONSUME(T.TableStart).startOffset;
    const table: Table = { kind: 'table', rows: [], start, end: start };
    this.OPTION({ GATE: this.nameNext, DEF: () => (table.name = this.SUBRULE(this.word)) });
    if (!table.name)
      this.missing('The name of the table is missing.', 'table shim-table { up to 0.3 mm: shim-thin x2 }');
    const title = this.optionalText();
    if (title) table.title = title;
    this.beforeBlock('the table');
    let opened = false;
    this.OPTION1(() => {
      opened = true;
      this.CONSUME(T.LBrace);
      this.MANY(() =>
        this.OR({
          IGNORE_AMBIGUITIES: true,
          DEF: [
            {
              ALT: () => {
                const row = this.SUBRULE(this.tableRow);
                if (!this.RECORDING_PHASE) table.rows.push(row);
              },
            },
            { ALT: () => this.CONSUME(T.Semicolon) },
            { ALT: () => this.SUBRULE(this.strayInTable) },
            { ALT: () => this.SUBRULE(this.skipBlock) },
          ],
        }),
      );
      this.CONSUME(T.RBrace);
    });
    if (!opened)
      this.missing(
        'The table has no rows.',
        'table shim-table { up to 0.3 mm: shim-thin x2 }',
        'brace-missing',
      );
    table.end = this.lastEnd();
    return table;
  });

  private readonly tableRow = this.RULE('tableRow', (): TableRow => {
    const interval = this.SUBRULE(this.interval);
    const row: TableRow = { interval, gives: [], start: interval.start, end: interval.end };
    let given = false;
    this.OPTION(() => {
      this.OR([{ ALT: () => this.CONSUME(T.Colon) }, { ALT: () => this.CONSUME(T.Gives) }]);
      given = true;
      const first = this.SUBRULE(this.expression);
      if (first) row.gives.push(first);
      this.MANY(() => {
        this.OR1([{ ALT: () => this.CONSUME(T.Comma) }, { ALT: () => this.CONSUME(T.And) }]);
        const more = this.SUBRULE1(this.expression);
        if (more) row.gives.push(more);
      });
    });
    if (!given) this.missing('What the row gives is missing.', 'up to 0.3 mm: shim-thin x2');
    row.end = this.lastEnd();
    return row;
  });

  private readonly strayInTable = this.RULE('strayInTable', () => {
    this.wrong(
      this.next(),
      'syntax',
      `A row of the table begins with a range, not with ${shown(this.next(), 'a text')}.`,
      { example: 'up to 0.3 mm: shim-thin x2' },
    );
    this.CONSUME(T.Skippable);
    this.MANY({
      GATE: () => !this.next().beginsLine && !this.atStatementEnd(),
      DEF: () => this.CONSUME1(T.Skippable),
    });
  });

  // ------------------------------------------------------------ what does not belong

  /** Before a block: anything else on the way to it is reported once and stepped over. */
  beforeBlock(owner: string): void {
    if (!this.RECORDING_PHASE && this.atStatementEnd()) return;
    this.option(30, {
      GATE: () => !this.atStatementEnd(),
      DEF: () => {
        const token = this.next();
        this.wrong(
          token,
          'syntax',
          `${shown(token)} has no meaning here; the block of ${owner} should begin.`,
        );
        this.CONSUME9(T.Skippable);
        this.SUBRULE7(this.junk);
      },
    });
  }

  /** After an item: what is left on its line or in front of the next item is reported once and stepped over. */
  leftover(owner: string): void {
    if (!this.RECORDING_PHASE && this.atStatementEnd()) return;
    this.option(31, {
      GATE: () => !this.atStatementEnd() && this.LA(1).tokenType !== T.Comma,
      DEF: () => {
        const token = this.next();
        this.wrong(token, 'syntax', `${shown(token)} does not belong to ${owner}, which has ended here.`);
        this.CONSUME8(T.Skippable);
        this.SUBRULE6(this.junk);
      },
    });
  }

  /** Something that is no item of a machine or file. */
  readonly strayItem = this.RULE('strayItem', (items?: unknown[], place?: string) => {
    const token = this.next();
    const start = token.startOffset;
    this.wrong(token, 'syntax', strayMessage(token, place ?? 'machine'), strayExtra(token));
    this.CONSUME(T.Skippable);
    // What was an item takes the lines of its clauses along, and no other line.
    this.MANY({
      GATE: () => !this.atStatementEnd() && (!this.next().beginsLine || CLAUSES.has(this.LA(1).tokenType)),
      DEF: () => this.CONSUME1(T.Skippable),
    });
    if (this.RECORDING_PHASE) return;
    items?.push({ kind: 'broken', start, end: this.endOfLast() });
  });

  indexOfNext(): number {
    return (this as unknown as { currIdx: number }).currIdx + 1;
  }
}

const CLAUSES: ReadonlySet<unknown> = new Set(CLAUSE_STARTS);
const KIND_WORDS: ReadonlySet<string> = new Set(Object.keys(CLAUSES_OF));
const ITEM_WORDS = [
  ...KIND_WORDS,
  'coupled',
  'value',
  'table',
  'variant',
  'never',
  'rule',
  'machine',
  'procedure',
  'use',
];

/** What a line inside a machine can begin with. */
const LINE_WORDS = [...CLAUSE_WORDS, ...ITEM_WORDS];

function strayMessage(token: T.Lexeme, place: string): string {
  if (CLAUSES.has(token.tokenType) || HEADER_WORDS.includes(token.key)) {
    return `“${token.key}” belongs to a declaration or a procedure, and none stands before it.`;
  }
  if (token.tokenType === T.TextString) return 'A text stands here by itself.';
  if (VERB_PHRASES.has(token.image) || STATEMENT_STARTS.has(token.image)) {
    return `“${token.image}” begins a step, and steps stand in a procedure.`;
  }
  const meant = nearest(token.image, ITEM_WORDS);
  const what = place === 'machine' ? 'nothing of a machine' : 'nothing of a file';
  return `“${token.image}” begins ${what}${meant ? `; did you mean “${meant}”?` : '.'}`;
}

function strayExtra(token: T.Lexeme): {
  example?: string;
  mend?: { title: string; start: number; end: number; text: string };
} {
  const meant = token.tokenType === T.PlainWord ? nearest(token.image, ITEM_WORDS) : undefined;
  if (!meant) return { example: 'part cover "cover" on base' };
  return { mend: { title: `Write “${meant}”`, ...spanOf(token), text: meant } };
}

function listed(kinds: readonly string[]): string {
  const names = kinds.map((kind) => `${kind === 'isolator' ? 'an' : 'a'} ${kind}`);
  if (names.length === 1) return names[0]!;
  return `${names.slice(0, -1).join(', ')} or ${names[names.length - 1]!}`;
}
