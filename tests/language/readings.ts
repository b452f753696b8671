/**
 * Lines that could be read in two ways, and how they are read: the parser says it here, the parser's own tests
 * (tests/grammar/parser/decisions.test.ts) hold it to what was decided.
 */
import { parse } from '../../grammar/parser/parse.ts';
import type {
  Action,
  Condition,
  FileItem,
  Procedure,
  Rule,
  RulePattern,
  Span,
  StateClaim,
  Statement,
} from '../../grammar/syntax/tree.ts';

interface Case {
  written: string;
  /** What stands around it: steps, or nothing. */
  as: 'steps' | 'file';
  because: string;
}

const steps = (written: string, because: string): Case => ({ written, as: 'steps', because });
const file = (written: string, because: string): Case => ({ written, as: 'file', because });

/** By the name of the test that holds the parser to the decision. */
export const READINGS: Readonly<Record<string, readonly Case[]>> = {
  '`in` right after a number is the inch': [
    steps('adjust gap to 0.02 in', '`in` right after a number is the inch'),
  ],
  'but `in order`, `in reverse order` and `in turn` after a number are the order': [
    steps('tighten nuts stage 2 in turn', 'but `in order`, `in reverse order` and `in turn` are the order'),
  ],
  'a unit stands on the line of its number': [
    file('part p item 7\n  in mains', 'a unit stands on the line of its number'),
  ],
  'a sum has a unit with every number': [
    steps('wait 1 h 30 min', 'each number of a sum has a unit of its own'),
    steps('tighten nuts to 25 N·m 2 times', 'a number without a unit goes on with no sum'),
  ],
  '`1 1/2` is one number, `1-8` a thread only behind the word thread': [
    steps('turn nut 1 1/2 turns', 'a whole number and a fraction are one number'),
    file('fastener f thread 1-8', 'an inch thread like this one needs the word `thread` before it'),
  ],
  'a minus with a space before it and none behind is a sign': [
    file('system s temperature -40 °C', 'a minus with a space before it and none behind is a sign'),
    steps('record x = a - 2 mm', 'with a space on both sides it takes away'),
  ],
  '`for each` at the start of a line is the loop, `for` anywhere else the tail': [
    steps('run engine\n  for 30 min', '`for` is a tail, also on a new line'),
    steps('for each n in 1..3 { }', 'but `for each` begins a loop'),
  ],
  'a verb at the start of a line begins an action': [
    steps('remove cover\nlock flywheel', 'a verb at the start of a line begins an action'),
  ],
  'after a comma it is a name': [steps('remove cover,\n  lock,\n  seal', 'but after a comma it is a name')],
  'unless a second name follows it: no list has two names side by side': [
    steps('remove cover,\nlock flywheel', 'no list has two names side by side; the comma is reported'),
  ],
  'the object of a verb may stand on the next line, if it is no verb': [
    steps('remove\n  cylinder-head', 'what a verb acts on may stand on the next line'),
  ],
  'two statements on a line are fine where a brace parts them': [
    steps('when a is b { remove cover } remove seal', 'a brace parts two statements on one line'),
  ],
  'a word directly before a brace among outcomes is an outcome, even a verb': [
    steps(
      'check face { clean { }  mark { } }',
      'a word before a brace, among outcomes, is an outcome, even a verb',
    ),
  ],
  'a kind at the start of a line begins a declaration, elsewhere it is a name': [
    file(
      'part a on seal\nseal b',
      'a kind at the start of a line begins a declaration, elsewhere it is a name',
    ),
  ],
  '`part of` and `part number "…"` are clauses, `part number` without a text declares one': [
    file('part a\n  part of pump\n  part number "12"', '`part of` and `part number "…"` are clauses'),
    file('part number on base', '`part number` without a text declares a part'),
  ],
  'a clause word at the start of a line begins a clause, after a clause word on its line it is a name': [
    file('part a on thread\n  under mass', 'after a clause word, on its line, a clause word is a name'),
  ],
  '`and` joins the last two objects and says that they are done together': [
    steps('remove a, b', 'a comma: one after the other'),
    steps('remove a and b', '`and`: together'),
  ],
  '`and discard` is a tail, also behind a list': [
    steps('remove a, b and discard', '`and discard` is a tail, and about all that is named'),
  ],
  '`with` behind `holding` says what it is held with; `with 2 people` does not': [
    steps('loosen cap holding drum with strap', '`with` behind `holding` says what it is held with'),
    steps('loosen cap holding drum with 2 people', 'but people are no tool'),
  ],
  'texts in a row are one text, so the sentence of a step stands before `until`, `expect` and `picture`': [
    steps(
      'turn hub "Slowly." until "it binds"',
      'texts in a row are one, so the sentence stands before `until`',
    ),
  ],
  'everyday words are tails only with what belongs to them': [
    steps('clean stage, pass, picture', 'everyday words are tails only with what belongs to them'),
    steps('tighten nuts stage 2', 'here `stage` has its number'),
  ],
  '`new` before a name is a new one; `kit` alone is a name': [
    steps('fit new seal', '`new` before a name is a new one'),
    steps('fit kit seals', '`kit` before a name is a kit'),
    steps('fit kit', '`kit` alone is a name'),
  ],
  'verbs of two words may be parted by what is acted on': [
    steps('let cylinder-head cool', 'what is acted on may stand between the words of a verb'),
    steps('move bracket to new pump', '`move` without `aside` or `back` goes on with `to`'),
  ],
  'what is measured comes before `of`, `between` or `=`; what it is measured on is the object': [
    steps('measure gap between impeller and plate as g', 'what is measured stands before `of` or `between`'),
    steps('choose shims from shim-table by total', 'what is chosen is the thing itself'),
  ],
  '`not over` is the clause of a declaration and the tail of an action': [
    file('system s not over 10 bar', '`not over` is a clause of a declaration'),
    steps('inflate tyre not over 3 bar', 'and a tail of an action'),
  ],
  'behind `holds 2 L` a clause word begins the next clause, another word is the fluid': [
    file('system s holds 2 L pressure 5 bar', 'behind the quantity a clause word begins the next clause'),
    file('system s holds 2 L oil', 'and any other word is the fluid'),
  ],
  '`x2` is a count, `x` without a number a name': [
    steps('fit washer x2', '`x` with a number is a count'),
    steps('fit x', '`x` alone is a name'),
  ],
  'a name in a list of exceptions that has a state of its own begins the next claim': [
    file(
      'procedure p ends with all of hub off except spindle, cap, cover fitted { }',
      'a name with a state of its own begins the next claim',
    ),
  ],
  '`proved safe` is the state `safe`': [
    file('procedure p starts with mains proved safe { }', '`proved safe` is the state `safe`'),
  ],
  '`is` asks an axis, a bare state word the state': [
    steps('if servo is off { }', '`is` asks a variant or a choice'),
    steps('if servo off { }', 'without `is` it asks the state'),
  ],
  'in a rule a verb after the scope is an action, unless a state ends the sentence': [
    file('rule r { before loosen cap require cover off }', 'in a rule a verb after the scope is an action'),
    file('rule r { while fit fitted never run }', 'unless a state ends the sentence: then it is a thing'),
  ],
  'has escapes undone and names in braces noted': [
    steps('note "A \\"dry\\" joint: {limit} and \\{no}"', '`\\"` and `\\{` stand for themselves'),
  ],
  'say how bad they are after their words, before or after `when`': [
    file('system s hazard live can kill when opening  live 400 V', 'how bad it is stands behind the hazards'),
  ],
  '`can` alone is a name like any other': [file('part can on can hazard hot', '`can` alone is a name')],
};

/** What the parser makes of it, in words; one line for each statement or item. */
export function reading({ written, as }: Case): string[] {
  const text = as === 'steps' ? `procedure p {\n${written}\n}\n` : `${written}\n`;
  const { tree, problems } = parse(text);
  const say = new Words(text);
  if (as === 'file') return tree.items.map((item) => say.item(item));
  const lines = (tree.items[0] as Procedure).body!.statements.map((one) => say.statement(one));
  return problems.length > 0 ? [...lines, 'and what is wrong is reported'] : lines;
}

class Words {
  private readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  item(item: FileItem): string {
    switch (item.kind) {
      case 'declaration': {
        const clauses = item.clauses.map((one) => `clause ${code(one.clause)} (${this.behind(one)})`);
        return [`${item.type} ${code(item.name!.text)}`, ...clauses].join('; ');
      }
      case 'procedure':
        return item.headers
          .flatMap((header) =>
            header.header === 'starts with' || header.header === 'ends with' ? header.claims : [],
          )
          .map((claim) => this.claim(claim))
          .join('; ');
      case 'rule':
        return this.rule(item);
      default:
        return item.kind;
    }
  }

  statement(statement: Statement): string {
    switch (statement.kind) {
      case 'action':
        return this.action(statement);
      case 'when':
      case 'if':
        return [`${statement.kind} ${this.condition(statement.condition)}`, ...this.inside(statement)].join(
          ', then ',
        );
      case 'for each':
        return `loop over ${code(this.slice(statement.over!))}`;
      case 'notice':
        return `“${statement.text!.value}”, with the value ${statement.text!.holes.map(({ text }) => code(text)).join()}`;
      default:
        return statement.kind;
    }
  }

  private inside({ body }: Extract<Statement, { kind: 'when' | 'if' }>): string[] {
    return (body?.statements ?? []).map((one) => this.statement(one));
  }

  private action(action: Action): string {
    const { objects, tails, outcomes, topic, quantity, expression, fresh, text } = action;
    const pieces = [`action ${code(action.verb)}`];
    if (topic) pieces.push(`what: ${code(topic.text)}`);
    if (objects.length > 0) {
      const names = objects.map((one) =>
        one.count ? `${one.name.text} (${one.count} of them)` : one.name.text,
      );
      const joined = names.map(code).join(action.together ? ' together with ' : ', ');
      pieces.push(`on ${fresh === undefined ? '' : `${fresh === 'new' ? 'a new' : 'the kit'} `}${joined}`);
    }
    if (quantity) pieces.push(`by ${code(this.slice(quantity))}`);
    if (expression)
      pieces.push(
        `= ${code(this.slice(expression))} (${expression.kind === 'binary' ? 'a difference' : 'a value'})`,
      );
    if (text) pieces.push('a sentence');
    for (const tail of tails) {
      const held = tail.tail === 'holding' && tail.with.length > 0 ? ', with a tool' : '';
      const behind = `${this.behind(tail)}${held}`;
      pieces.push(behind === '' ? `tail ${code(tail.tail)}` : `tail ${code(tail.tail)} (${behind})`);
    }
    for (const outcome of outcomes) pieces.push(`outcome ${code(outcome.word!.text)}`);
    return pieces.join('; ');
  }

  private condition(condition: Condition | undefined): string {
    if (condition?.kind === 'axis')
      return `the variant ${code(condition.axis.text)} is ${code(condition.values[0]!.text)}`;
    if (condition?.kind === 'state')
      return `the thing ${code(condition.ref.name.text)} is in the state ${code(condition.state.text)}`;
    return condition?.kind ?? '';
  }

  private claim({ scope, refs, state, except }: StateClaim): string {
    const names = refs.map((ref) => code(ref.name.text)).join(', ');
    const but = except.length > 0 ? `, but for ${except.map((ref) => code(ref.name.text)).join(', ')}` : '';
    return `${scope === 'all of' ? 'all of ' : ''}${names} ${code(state!.text)}${but}`;
  }

  private rule({ bodies: [body] }: Rule): string {
    return `${body!.scope} ${this.pattern(body!.trigger)}: ${body!.demand} ${this.pattern(body!.demanded)}`;
  }

  private pattern(pattern: RulePattern | undefined): string {
    if (pattern?.kind === 'event') {
      const of = pattern.selectors.map((one) => code(this.slice(one))).join(', ');
      return `the action ${code(pattern.verb.text)}${of === '' ? '' : ` on ${of}`}`;
    }
    return `the state ${code(`${pattern!.selectors.map((one) => this.slice(one)).join(', ')} ${pattern!.state.text}`)}`;
  }

  /** What stands behind the word that begins a clause or tail. */
  private behind(node: Span & { word: Span }): string {
    return this.slice({ start: node.word.end, end: node.end }).trim();
  }

  private slice({ start, end }: Span): string {
    return this.text.slice(start, end).replace(/\s+/g, ' ');
  }
}

function code(text: string): string {
  return `\`${text}\``;
}
